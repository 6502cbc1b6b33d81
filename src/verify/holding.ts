/** What somebody holds: a certificate as PDF or JSON, or neither. Runs in Node and in a browser. */

import { textOf } from '../register/bytes.ts'
import { checkWords } from '../register/words.ts'
import { attachmentsOf, isPdf } from './attachments.ts'

/** Names of the files an issued certificate, or a customer's copy of one, carries beside the lot's figures. */
export const carried = {
  data: 'certificate.json',
  proof: 'proof.json',
  copy: 'copy.json'
} as const

export interface Holding {
  /** Text of what the certificate says. */
  readonly data: string
  /** Text of the proof that came with it. */
  readonly proof?: string
  /** The file itself, where it is a PDF: its bytes are compared too. */
  readonly pdf?: Uint8Array
}

/** Read a file, or say in one sentence why it is no certificate. */
export async function holdingOf(bytes: Uint8Array): Promise<Holding | string> {
  if (bytes.length === 0) return checkWords.empty
  if (isPdf(bytes)) return holdingOfPdf(bytes)
  const data = textOf(bytes)
  if (data === undefined || !data.trimStart().startsWith('{')) return checkWords.neither
  return { data }
}

async function holdingOfPdf(pdf: Uint8Array): Promise<Holding | string> {
  const files = await attachmentsOf(pdf)
  const text = (name: string) => {
    const file = files.get(name)
    return file && textOf(file)
  }
  const data = text(carried.copy) ?? text(carried.data)
  const proof = text(carried.proof)
  if (data === undefined) return checkWords.noData
  return { data, ...(proof === undefined ? {} : { proof }), pdf }
}
