/**
 * A certificate, or the preview of one, as a PDF file: PDF/A-3a with the lot's data attached, and
 * tagged after PDF/UA-1. The same document gives the same bytes.
 */

import type { PdfSigner } from '../documents/issued-paper.ts'
import type { TableSection } from '../documents/shipment-types.ts'
import type { CertificateDocument } from '../documents/types.ts'
import { noonOf, openFile, type Paper } from './file.ts'
import {
  drawBanner,
  drawFeet,
  drawRunningHead,
  footHeight,
  footLines,
  identityOf,
  markOf
} from './furniture.ts'
import { drawHead } from './head.ts'
import type { Element, PdfFile, Subset } from './pdfkit.ts'
import { drawTableSection } from './plain-table.ts'
import { groupResults } from './results.ts'
import { drawSections, type Tied } from './sections.ts'
import { areaOf, Sheet, textWidthOn } from './sheet.ts'
import { withSignature } from './signature.ts'
import { drawResults } from './table.ts'
import { styles } from './text.ts'
import { type Words, wordsIn } from './words.ts'

/** Height of the results' heading, column titles and a short row. */
const KEPT_WITH_HEADING = 70

/** A file carried inside the PDF. */
export interface Attachment {
  /** One of those whose purpose the words of the paper tell. */
  readonly name: string
  /** JSON text, embedded as it is. */
  readonly bytes: Uint8Array
}

/** What ties the paper to the register. */
export interface Seal {
  readonly attachments: readonly Attachment[]
  /** SHA-256 of what the certificate says, in hexadecimal digits; absent on a preview. */
  readonly fingerprint?: string
  /** The signature that the file itself bears; its place is left blank where it is yet to be made. */
  readonly pdfSignature?: { readonly signer: PdfSigner; readonly cms?: Uint8Array }
}

/**
 * The PDF of a certificate.
 *
 * @param seal the lot's public data, and on an issued certificate the evidence that it was
 * @throws MissingGlyph where a text holds a sign the font lacks
 * @throws Error where a row, a fact or a statement is taller than a page
 */
export async function certificatePdf(
  document: CertificateDocument,
  { attachments, fingerprint, pdfSignature }: Seal
): Promise<Uint8Array> {
  const words = wordsIn(document.language)
  const pdf = openPdf(document, words, 'PDF/A-3a')
  for (const attachment of attachments) attach(pdf, document, attachment, words)
  const { signer, cms } = pdfSignature ?? {}
  const drawn = writePdf(pdf, document, words, {
    ...(fingerprint !== undefined && { fingerprint }),
    ...(signer && { signer })
  })
  return cms ? withSignature(drawn, cms) : drawn
}

/**
 * The same pages as PDF/A-1b, which carries no attachment: the one profile a free validator that
 * can be installed anywhere checks.
 */
export async function archivalTwin(
  document: CertificateDocument,
  tied: Tied = {}
): Promise<Uint8Array> {
  const words = wordsIn(document.language)
  return writePdf(openPdf(document, words, 'PDF/A-1b'), document, words, tied)
}

const openPdf = (document: CertificateDocument, words: Words, subset: Subset): PdfFile =>
  openFile(paperOf(document, words), subset)

/** What the file says of itself. */
const paperOf = (document: CertificateDocument, words: Words): Paper => ({
  title: `${document.title}, ${identityOf(document, words)}`,
  author: document.producer.name,
  subject: `${words.lot} ${document.lot}`,
  language: document.language,
  dated: document.dated
})

export function attach(
  pdf: PdfFile,
  document: Pick<CertificateDocument, 'dated'>,
  { name, bytes }: Attachment,
  words: Words
): void {
  pdf.file(bytes, {
    name,
    type: 'application/json',
    relationship: 'Data',
    description: words.attachments[name] ?? words.attachment,
    creationDate: noonOf(document.dated),
    modifiedDate: noonOf(document.dated)
  })
}

function writePdf(
  pdf: PdfFile,
  document: CertificateDocument,
  words: Words,
  tied: Tied
): Uint8Array {
  drawCertificate(pdf, document, words, tied)
  return pdf.finish()
}

/** What a certificate is drawn with beside its document. */
export interface Extras extends Tied {
  /** Of a customer's copy: the limits of the customer. */
  readonly limits?: TableSection
  /** What it is a part of, where a file holds several papers. */
  readonly whole?: Element
  /** Its language, where the file's is another. */
  readonly lang?: string
}

/** Draw a certificate on pages of its own. */
export function drawCertificate(
  pdf: PdfFile,
  document: CertificateDocument,
  words: Words,
  { limits, whole, lang, ...tied }: Extras
): void {
  const mark = markOf(document, words)
  const size = document.paper === 'A4' ? 'A4' : 'LETTER'
  const foot = footLines(pdf, document, words, textWidthOn(size))
  const startPage = (page: Sheet) => {
    if (mark !== undefined) drawBanner(page, mark, false)
    drawRunningHead(page, document)
  }
  const sheet = new Sheet(pdf, areaOf(size, footHeight(foot)), startPage, { whole, lang })
  if (mark !== undefined) drawBanner(sheet, mark, true)
  drawHead(sheet, document, words)
  drawResultsSection(sheet, document, words)
  if (limits) drawTableSection(sheet, limits, words)
  drawSections(sheet, document, words, tied)
  drawFeet(sheet, foot, words)
  sheet.root.end()
}

function drawResultsSection(sheet: Sheet, document: CertificateDocument, words: Words): void {
  const groups = groupResults(document.results, words)
  if (groups.length === 0) return
  sheet.ensureSpace(KEPT_WITH_HEADING, words.results)
  sheet.paragraph(sheet.root, 'H2', styles.lead, words.results)
  sheet.y += 3
  drawResults(sheet, groups, words)
  sheet.paragraph(sheet.root, 'P', styles.small, words.columnNote)
  sheet.y += 8
}
