/** The papers of a shipment: each by itself, and all of them as one file. */

import type { CustomerCopy, ShipmentPack } from '../documents/shipment-types.ts'
import { attach, type Attachment, drawCertificate, type Extras } from './certificate.ts'
import { openFile } from './file.ts'
import { drawLabel } from './label.ts'
import { drawPackingList } from './packing-list.ts'
import type { PdfFile, Subset } from './pdfkit.ts'
import { wordsIn } from './words.ts'

/**
 * The PDF of a customer's copy with the files it carries.
 *
 * @param subset PDF/A-1b may carry none
 */
export async function customerCopyPdf(
  copy: CustomerCopy,
  attachments: readonly Attachment[],
  subset: Subset = 'PDF/A-3a'
): Promise<Uint8Array> {
  const { document } = copy
  const words = wordsIn(document.language)
  const paper = {
    title: `${document.title}, ${copy.name}`,
    author: document.producer.name,
    subject: `${words.lot} ${document.lot}`,
    language: document.language,
    dated: document.dated
  }
  const pdf = openFile(paper, subset)
  for (const attachment of attachments) attach(pdf, document, attachment, words)
  drawCopy(pdf, copy, {})
  return pdf.finish()
}

/**
 * All papers of a shipment as one file: the packing list first, then the copies, then the labels.
 *
 * @param subset PDF/A-1b carries no attachment
 * @throws LabelTooSmall where the text of a label fits on none
 */
export async function packPdf(
  { packingList, copies, labels }: ShipmentPack,
  subset: Subset = 'PDF/A-3a'
): Promise<Uint8Array> {
  const words = wordsIn(packingList.language)
  const pdf = openFile(
    {
      title: words.packFor(packingList.number),
      author: packingList.producer.name,
      subject: `${words.shipment} ${packingList.number}`,
      language: packingList.language,
      dated: packingList.dated
    },
    subset
  )
  for (const { document, name, data } of subset === 'PDF/A-3a' ? copies : [])
    attach(pdf, document, { name: `${name}.json`, bytes: bytesOf(data) }, words)
  const whole = pdf.struct('Document')
  pdf.addStructure(whole)
  drawPackingList(pdf, packingList, words, whole)
  for (const copy of copies) {
    const { language } = copy.document
    const lang = language === packingList.language ? undefined : language
    drawCopy(pdf, copy, { whole, ...(lang && { lang }) })
  }
  for (const label of labels.values()) drawLabel(pdf, label, whole)
  whole.end()
  return pdf.finish()
}

const bytesOf = (text: string): Uint8Array => Buffer.from(text, 'utf8')

function drawCopy(
  pdf: PdfFile,
  { document, fingerprint, limits }: CustomerCopy,
  part: Pick<Extras, 'whole' | 'lang'>
): void {
  const words = wordsIn(document.language)
  drawCertificate(
    pdf,
    document,
    { ...words, checkText: words.checkCopyText, certificate: words.copyOf },
    { fingerprint, ...(limits ? { limits } : {}), ...part }
  )
}
