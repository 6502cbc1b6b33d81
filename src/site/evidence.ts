/** What goes with an issued certificate: the files inside its PDF and those beside it. */

import type { IssuedRegister } from '../documents/issued.ts'
import { evidenceOf } from '../documents/papers.ts'
import type { CertificatePaper, IssuedPaper, LotPage } from '../documents/types.ts'
import { proofOf, proofText } from '../register/proof.ts'
import type { Attachment, Seal } from './steps.ts'

/** Names of the files a certificate carries. */
const names = { figures: 'data.json', document: 'certificate.json', proof: 'proof.json' } as const

/** The proof of an issued paper, as it stood when the paper was drawn. */
export async function proofFor(register: IssuedRegister, paper: IssuedPaper): Promise<string> {
  const { number, revision, provenBy } = paper
  const proof = await proofOf(register.log, register.tree, number, revision, provenBy)
  if (!proof) throw new RangeError(`the register has no ${number} revision ${revision}`)
  return proofText(proof)
}

/** Everything a PDF is drawn from beside its document. */
export async function sealFor(
  page: Pick<LotPage, 'attachment'>,
  { issued }: CertificatePaper,
  register: IssuedRegister
): Promise<Seal> {
  return issued
    ? issuedSeal(issued, register)
    : { attachments: [file(names.figures, page.attachment ?? '')] }
}

async function issuedSeal(issued: IssuedPaper, register: IssuedRegister): Promise<Seal> {
  return {
    fingerprint: issued.sha256,
    attachments: [
      file(names.figures, issued.data),
      file(names.document, issued.text),
      file(names.proof, await proofFor(register, issued))
    ]
  }
}

const file = (name: string, text: string): Attachment => ({
  name,
  bytes: Buffer.from(text, 'utf8')
})

/** The seal of a revision that the register has. */
export async function sealOfIssued(
  register: IssuedRegister,
  number: string,
  revision: number
): Promise<Seal> {
  const issued = register.issued.find(
    one => one.revision.number === number && one.revision.revision === revision
  )
  if (!issued) throw new RangeError(`the register has no ${number} revision ${revision}`)
  return issuedSeal(evidenceOf(issued), register)
}
