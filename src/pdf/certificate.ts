/**
 * A certificate, or the preview of one, as a PDF file: PDF/A-3a with the lot's data attached, and
 * tagged after PDF/UA-1. The same document gives the same bytes.
 */

import type { CertificateDocument } from '../documents/types.ts'
import { fontOf } from './fonts.ts'
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
import { PdfFile, type Subset } from './pdfkit.ts'
import { groupResults } from './results.ts'
import { drawSections } from './sections.ts'
import { areaOf, Sheet, textWidthOn } from './sheet.ts'
import { drawResults } from './table.ts'
import { openFaces, styles } from './text.ts'
import { type Words, wordsIn } from './words.ts'
import type { Info } from './xmp.ts'

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
  { attachments, fingerprint }: Seal
): Promise<Uint8Array> {
  const words = wordsIn(document.language)
  const pdf = openPdf(document, words, 'PDF/A-3a')
  for (const attachment of attachments) attach(pdf, document, attachment, words)
  return writePdf(pdf, document, words, fingerprint)
}

/**
 * The same pages as PDF/A-1b, which carries no attachment: the one profile a free validator that
 * can be installed anywhere checks.
 */
export async function archivalTwin(document: CertificateDocument): Promise<Uint8Array> {
  const words = wordsIn(document.language)
  return writePdf(openPdf(document, words, 'PDF/A-1b'), document, words)
}

function openPdf(document: CertificateDocument, words: Words, subset: Subset): PdfFile {
  const pdf = new PdfFile({
    pdfVersion: subset === 'PDF/A-1b' ? '1.4' : '1.7',
    subset,
    tagged: true,
    lang: document.language,
    displayTitle: true,
    info: infoOf(document, words),
    font: fontOf('regular'),
    autoFirstPage: false,
    bufferPages: true
  })
  openFaces(pdf)
  return pdf
}

/** Noon in UTC of the day the document stands for. */
const datedOf = (document: CertificateDocument): Date => new Date(`${document.dated}T12:00:00Z`)

function infoOf(document: CertificateDocument, words: Words): Info {
  return {
    Title: `${document.title}, ${identityOf(document, words)}`,
    Author: document.producer.name,
    Subject: `${words.lot} ${document.lot}`,
    Creator: 'Lotfolio',
    Producer: 'PDFKit',
    CreationDate: datedOf(document),
    ModDate: datedOf(document)
  }
}

function attach(
  pdf: PdfFile,
  document: CertificateDocument,
  { name, bytes }: Attachment,
  words: Words
): void {
  pdf.file(bytes, {
    name,
    type: 'application/json',
    relationship: 'Data',
    description: words.attachments[name] ?? words.attachment,
    creationDate: datedOf(document),
    modifiedDate: datedOf(document)
  })
}

function writePdf(
  pdf: PdfFile,
  document: CertificateDocument,
  words: Words,
  fingerprint?: string
): Uint8Array {
  const mark = markOf(document, words)
  const size = document.paper === 'A4' ? 'A4' : 'LETTER'
  const foot = footLines(pdf, document, words, textWidthOn(size))
  const sheet = new Sheet(pdf, areaOf(size, footHeight(foot)), page => {
    if (mark !== undefined) drawBanner(page, mark, false)
    drawRunningHead(page, document)
  })
  if (mark !== undefined) drawBanner(sheet, mark, true)
  drawHead(sheet, document, words)
  drawResultsSection(sheet, document, words)
  drawSections(sheet, document, words, fingerprint)
  drawFeet(sheet, foot, words)
  sheet.root.end()
  return pdf.finish()
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
