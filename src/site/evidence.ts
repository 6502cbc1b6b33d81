/** What goes with an issued certificate: the files inside its PDF and those beside it. */

import type { IssuedRegister } from '../documents/issued.ts'
import type { IssuedPaper } from '../documents/issued-paper.ts'
import type { CertificatePaper, LotPage } from '../documents/types.ts'
import { proofOf, proofText } from '../register/proof.ts'
import { carried } from '../verify/holding.ts'
import type { Attachment, Seal } from './steps.ts'

/** The lot's figures, which every paper carries. */
const FIGURES = 'data.json'

/** What a proof is taken from. */
type Proving = Pick<IssuedRegister, 'log' | 'tree'>

/** The proof of an issued paper, as it stood when the paper was drawn. */
async function proofFor(register: Proving, paper: IssuedPaper): Promise<string> {
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
    : { attachments: [file(FIGURES, page.attachment ?? '')] }
}

/** What goes with an issued paper. */
export async function issuedSeal(issued: IssuedPaper, register: Proving): Promise<Seal> {
  const { pdfSignature } = issued
  return {
    fingerprint: issued.sha256,
    ...(pdfSignature && { pdfSignature }),
    attachments: [
      file(FIGURES, issued.data),
      file(carried.data, issued.text),
      file(carried.proof, await proofFor(register, issued))
    ]
  }
}

const file = (name: string, text: string): Attachment => ({
  name,
  bytes: Buffer.from(text, 'utf8')
})
