/**
 * Labels as a PDF file: one on a page of its own size, or many on a sheet of stock. PDF/A-3a and
 * tagged after PDF/UA-1; the same document gives the same bytes.
 */

import type { LabelDocument } from '../documents/label-types.ts'
import type { PictogramText } from '../documents/types.ts'
import { qrFigure } from '../figures/qr.ts'
import { fontOf } from './fonts.ts'
import type { PlacedItem, PlacedText } from './label-items.ts'
import { type LabelLayout, layoutLabel } from './label-layout.ts'
import { type Measure, MM_PER_POINT } from './label-text.ts'
import { type Element, type Pdf, PdfFile, type Subset } from './pdfkit.ts'
import { BLACK, drawLine, openFaces, type Style, WHITE, widthOf } from './text.ts'

const pt = (mm: number): number => mm / MM_PER_POINT

/** Labels in rows and columns on one paper. Lengths in millimetres. */
export interface LabelStock {
  readonly paper: readonly [width: number, height: number]
  readonly columns: number
  readonly rows: number
  readonly label: readonly [width: number, height: number]
  /** Of the first label, from the paper's left and upper edges. */
  readonly first: readonly [left: number, top: number]
  /** From a label's edge to the same edge of the next. */
  readonly pitch: readonly [across: number, down: number]
}

/** How labels are printed. */
export interface LabelPrint {
  readonly stock?: LabelStock
  /** One, or a sheet of them, where nothing is said. */
  readonly copies?: number
  /** Places on the first sheet that are used up. */
  readonly skip?: number
}

/**
 * The PDF of a label.
 *
 * @throws LabelTooSmall where the text does not fit on the stock, or on any label
 * @throws MissingGlyph where a text holds a sign the font lacks
 */
export function labelPdf(document: LabelDocument, print: LabelPrint = {}): Uint8Array {
  return writeLabels(document, print, 'PDF/A-3a')
}

/** The same as PDF/A-1b, for the validator that can be installed anywhere. */
export const labelTwin = (document: LabelDocument, print: LabelPrint = {}): Uint8Array =>
  writeLabels(document, print, 'PDF/A-1b')

function writeLabels(document: LabelDocument, print: LabelPrint, subset: Subset): Uint8Array {
  const pdf = openPdf(document, subset)
  const layout = layoutLabel(document, measureWith(pdf), print.stock?.label)
  const root = pdf.struct('Document')
  pdf.addStructure(root)
  for (const [index, { x, y, isNewPage, page }] of placesOf(layout, print).entries()) {
    if (isNewPage) pdf.addPage({ size: [pt(page[0]), pt(page[1])], margin: 0 })
    // What repeats on a sheet is read once.
    if (index === 0) drawTagged(pdf, root, layout, x, y)
    else drawRepeated(pdf, layout, x, y)
  }
  root.end()
  return pdf.finish()
}

/** Draw a label on a page of its own size, as a part of a file that holds several papers. */
export function drawLabel(pdf: PdfFile, document: LabelDocument, whole: Element): void {
  const layout = layoutLabel(document, measureWith(pdf))
  pdf.addPage({ size: [pt(layout.width), pt(layout.height)], margin: 0 })
  const root = pdf.struct('Part')
  whole.add(root)
  drawTagged(pdf, root, layout, 0, 0)
  root.end()
}

/** Width at size 1, whatever unit the size is in. */
export const measureWith =
  (pdf: Pdf): Measure =>
  (face, text) =>
    widthOf(pdf, { face, size: 1, leading: 1, colour: BLACK }, text)

export function openPdf(document: LabelDocument, subset: Subset = 'PDF/A-3a'): PdfFile {
  const dated = new Date(`${document.dated}T12:00:00Z`)
  const pdf = new PdfFile({
    pdfVersion: subset === 'PDF/A-1b' ? '1.4' : '1.7',
    subset,
    tagged: true,
    lang: document.languages[0]!,
    displayTitle: true,
    info: {
      Title: document.title,
      Author: document.author,
      Subject: document.subject,
      Creator: 'Lotfolio',
      Producer: 'PDFKit',
      CreationDate: dated,
      ModDate: dated
    },
    font: fontOf('regular'),
    autoFirstPage: false,
    bufferPages: true
  })
  openFaces(pdf)
  return pdf
}

interface LabelPlace {
  readonly x: number
  readonly y: number
  readonly page: readonly [number, number]
  readonly isNewPage: boolean
}

/** Where each copy goes. */
function placesOf(layout: LabelLayout, { stock, copies, skip = 0 }: LabelPrint): LabelPlace[] {
  const page = stock?.paper ?? ([layout.width, layout.height] as const)
  if (!stock)
    return Array.from({ length: copies ?? 1 }, () => ({ x: 0, y: 0, page, isNewPage: true }))
  const perSheet = stock.columns * stock.rows
  return Array.from({ length: copies ?? perSheet - skip }, (_, index) => {
    const place = (index + skip) % perSheet
    return {
      x: stock.first[0] + (place % stock.columns) * stock.pitch[0],
      y: stock.first[1] + Math.floor(place / stock.columns) * stock.pitch[1],
      page,
      isNewPage: index === 0 || place === 0
    }
  })
}

function drawRepeated(pdf: Pdf, { items }: LabelLayout, x: number, y: number): void {
  pdf.markContent('Artifact', { type: 'Layout' })
  for (const item of items) drawItem(pdf, item, x, y)
  pdf.endMarkedContent()
}

function drawTagged(pdf: Pdf, root: Element, { items }: LabelLayout, x: number, y: number): void {
  for (const item of items) {
    const element = pdf.struct(tagOf(item), optionsOf(item, x, y))
    root.add(element)
    element.add(() => drawItem(pdf, item, x, y)).end()
  }
}

const tagOf = (item: PlacedItem): string => (item.is === 'text' ? item.tag : 'Figure')

function optionsOf(item: PlacedItem, x: number, y: number) {
  if (item.is === 'text') return item.language === undefined ? {} : { lang: item.language }
  const [left, top] = [pt(x + item.x), pt(y + item.y)]
  return {
    alt: item.is === 'code' ? item.code.alt : item.pictogram.title,
    bbox: [left, top, left + pt(item.width), top + pt(item.height)] as const
  }
}

function drawItem(pdf: Pdf, item: PlacedItem, x: number, y: number): void {
  const [left, top] = [pt(x + item.x), pt(y + item.y)]
  if (item.is === 'text') drawText(pdf, item, left, top)
  else if (item.is === 'pictogram') drawPictogram(pdf, item.pictogram, left, top, pt(item.width))
  else drawCode(pdf, item.code.url, left, top, pt(item.width))
}

/** Share of a line that lies above its baseline. */
const ABOVE_BASELINE = 0.77

function drawText(pdf: Pdf, item: PlacedText, left: number, top: number): void {
  const { face, size, leading, lines } = item
  const style: Style = { face, size: pt(size), leading: pt(leading), colour: BLACK }
  lines.forEach((line, index) =>
    drawLine(pdf, style, line, left, top + (index + ABOVE_BASELINE) * style.leading)
  )
}

const inks: Record<PictogramText['parts'][number]['ink'], string> = {
  black: BLACK,
  white: WHITE,
  red: '#e2001a'
}

/** Pictograms are drawn 100 units wide. */
const UNITS = 100

function drawPictogram(
  pdf: Pdf,
  { parts }: PictogramText,
  left: number,
  top: number,
  width: number
): void {
  pdf
    .save()
    .translate(left, top)
    .scale(width / UNITS)
  for (const { path, ink } of parts) pdf.path(path).fillColor(inks[ink]).fill()
  pdf.restore()
}

function drawCode(pdf: Pdf, url: string, left: number, top: number, side: number): void {
  const { size, runs } = qrFigure(url)
  const module = side / size
  for (const run of runs)
    pdf.rect(left + run.x * module, top + run.y * module, run.length * module, module)
  pdf.fillColor(BLACK).fill()
}
