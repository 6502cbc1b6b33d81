/** What stands on each page around the text: preview banner, running head, page number. */

import type { CertificateDocument } from '../documents/types.ts'
import type { Pdf } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import {
  BLACK,
  drawLine,
  drawLines,
  firstBaseline,
  GREY,
  heightOf,
  styles,
  widthOf,
  wrapText
} from './text.ts'
import type { Words } from './words.ts'

const BANNER_PADDING = 4
const AFTER_BANNER = 12
/** From the text to the foot's rule. */
const ABOVE_FOOT = 16
const EDGE = { inset: 16, width: 9, step: 7 }

const footStyle = { ...styles.small, colour: GREY }

/** The mark of a paper that is not issued, or undefined. */
export const markOf = (document: CertificateDocument, words: Words): string | undefined =>
  document.mark ?? (document.preview ? words.previewMark : undefined)

/** 'C-26-014, revision 1', or the mark where there is no number. */
export function identityOf(document: CertificateDocument, words: Words): string {
  const { number, revision } = document
  if (number === undefined) return markOf(document, words) ?? words.noNumber
  return revision === undefined ? number : `${number}, ${words.revision} ${revision}`
}

/** The mark, white on black over the whole width, and hatched edges: seen at a glance. */
export function drawBanner(sheet: Sheet, mark: string, first: boolean): void {
  const { pdf, area, y } = sheet
  const lines = wrapText(pdf, styles.banner, mark, area.width - 4 * BANNER_PADDING)
  const height = heightOf(styles.banner, lines) + 2 * BANNER_PADDING
  sheet.artifact(() => {
    pdf.rect(area.left, y, area.width, height).fillColor(BLACK).fill()
    hatchEdges(pdf)
  })
  const draw = () =>
    drawLines(pdf, styles.banner, lines, area.left + 2 * BANNER_PADDING, y + BANNER_PADDING)
  if (first) sheet.tagged(sheet.root, 'P', draw)
  else sheet.artifact(draw, 'Pagination')
  sheet.y += height + AFTER_BANNER
}

/** Producer and title above a rule, at the top of each further page. */
export function drawRunningHead(
  sheet: Sheet,
  document: Pick<CertificateDocument, 'producer' | 'title'>
): void {
  const { pdf, area } = sheet
  const baseline = firstBaseline(footStyle, sheet.y)
  const producer = firstLine(sheet, document.producer.name)
  const title = firstLine(sheet, document.title)
  sheet.artifact(() => {
    drawLine(pdf, footStyle, producer, area.left, baseline)
    drawEnd(sheet, title, baseline)
  }, 'Pagination')
  sheet.y += footStyle.leading + 2
  sheet.rule(0.4)
  sheet.y += 6
}

/** What fits in half the width; dots stand for the rest. */
function firstLine(sheet: Sheet, text: string): string {
  const [line, ...rest] = wrapText(sheet.pdf, footStyle, text, sheet.half - 12)
  return rest.length === 0 ? line! : `${line!.trimEnd()} …`
}

/** Number, revision and lot, as they stand below each page of `width`. */
export function footLines(
  pdf: Pdf,
  document: CertificateDocument,
  words: Words,
  width: number
): string[] {
  const name = document.number === undefined ? '' : `${words.certificate} `
  const text = `${name}${identityOf(document, words)}  ·  ${words.lot} ${document.lot}`
  return wrapFoot(pdf, text, words, width)
}

/** A text as it stands below each page of `width`, beside the page's number. */
export const wrapFoot = (pdf: Pdf, text: string, words: Words, width: number): string[] =>
  wrapText(pdf, footStyle, text, width - widthOf(pdf, footStyle, words.page(999, 999)))

export const footHeight = (lines: readonly string[]): number => heightOf(footStyle, lines)

/** The foot and 'Page n of m' below each page. To be called once all pages exist. */
export function drawFeet(sheet: Sheet, lines: readonly string[], words: Words): void {
  const { pdf, area } = sheet
  const y = area.bottom + ABOVE_FOOT
  for (let index = 0; index < sheet.pages; index += 1) {
    pdf.switchToPage(sheet.before + index)
    sheet.artifact(() => {
      pdf.lineWidth(0.4).strokeColor(BLACK)
      pdf.moveTo(area.left, y).lineTo(sheet.right, y).stroke()
      drawLines(pdf, footStyle, lines, area.left, y + 3)
      drawEnd(sheet, words.page(index + 1, sheet.pages), firstBaseline(footStyle, y + 3))
    }, 'Pagination')
  }
}

function drawEnd(sheet: Sheet, text: string, baseline: number): void {
  const { pdf } = sheet
  drawLine(pdf, footStyle, text, sheet.right - widthOf(pdf, footStyle, text.trimEnd()), baseline)
}

/** Slanting strokes along both edges of the page. */
function hatchEdges(pdf: Pdf): void {
  const { width, height } = pdf.page
  pdf.lineWidth(1.2).strokeColor(BLACK)
  for (let y = EDGE.inset; y < height - EDGE.inset - EDGE.width; y += EDGE.step)
    for (const x of [EDGE.inset, width - EDGE.inset - EDGE.width])
      pdf.moveTo(x, y + EDGE.width).lineTo(x + EDGE.width, y)
  pdf.stroke()
}
