/** Entering a certificate in the register: the lines of its log, its PDF, and what lies beside the log. */

import { documentOf } from '../documents/frozen-schema.ts'
import { readFrozen } from '../documents/frozen.ts'
import { evidenceIn } from '../documents/papers.ts'
import type { CertificateOrder } from '../records/types.ts'
import { documentName, signatureName } from '../register/compare.ts'
import type { RegisterEvent } from '../register/events.ts'
import { fingerprint } from '../register/fingerprint.ts'
import { readLog, treeOf } from '../register/log.ts'
import { issuedSeal } from '../site/evidence.ts'
import type { PdfKey } from './pdf-key.ts'
import { added, type Desk } from './register-work.ts'
import { signedEvent, type SigningKey } from './signing.ts'

/** A certificate that nothing stands against. */
export interface Ready {
  readonly order: CertificateOrder
  readonly text: string
  /** Day it is entered in the register. */
  readonly date: string
  readonly newRecord?: { readonly name: string; readonly text: string }
}

/** What a certificate is signed with. */
export interface Keys {
  /** What it says. */
  readonly key?: SigningKey | undefined
  /** Its PDF. */
  readonly pdfKey?: PdfKey
}

/** The log with the certificate's lines, the PDF they speak of, and what lies beside the log. */
export async function enter({ order, text, date }: Ready, desk: Desk, { key, pdfKey }: Keys) {
  const data = await fingerprint(text)
  const { number, revision, lot, reason } = order
  const said: RegisterEvent =
    revision === 1
      ? { is: 'issued', number, revision, lot, data }
      : { is: 'amended', number, revision, lot, data, reason: reason! }
  const signed = key ? [await signedEvent(key, order, text)] : []
  const texts = [...desk.documents.values(), text]
  const log = await added(desk.log, [said, ...signed], date, texts)
  const { pdf, cms } = await drawn(log, text, data, pdfKey)
  const drawnEvent: RegisterEvent = {
    is: 'drawn',
    number,
    revision,
    pdf: await fingerprint(pdf),
    ...(cms && { cms: await fingerprint(cms) })
  }
  const files = new Map<string, string | Uint8Array>([[documentName(order), text]])
  if (cms) files.set(signatureName(order), cms)
  return { pdf, files, log: await added(log, [drawnEvent], date, texts) }
}

/** The PDF, carrying the proof of the lines just entered: all that the log has. */
async function drawn(
  log: string,
  text: string,
  sha256: string,
  pdfKey: PdfKey | undefined
): Promise<{ readonly pdf: Uint8Array; readonly cms?: Uint8Array }> {
  const [{ certificatePdf }, { withSignature }] = await Promise.all([
    import('../pdf/certificate.ts'),
    import('../pdf/signature.ts')
  ])
  const frozen = readFrozen(text)!
  const read = await readLog(log)
  const seal = await issuedSeal(
    { ...evidenceIn(frozen), text, sha256, provenBy: read.lines.length },
    { log: read, tree: await treeOf(read) }
  )
  const document = documentOf(frozen.certificate)
  if (!pdfKey) return { pdf: await certificatePdf(document, seal) }
  const { signer, sign } = pdfKey
  const blank = await certificatePdf(document, { ...seal, pdfSignature: { signer } })
  const cms = await sign(blank)
  return { pdf: withSignature(blank, cms), cms }
}
