/**
 * Marks of the verdicts, drawn in black: a tick or a cross where the figure is clear of the limit,
 * the same in a ring where the limit lies within its uncertainty, a ring alone where nothing can
 * be said. The word always stands beside the mark.
 */

import type { CertificateDocument } from '../documents/types.ts'
import type { Pdf } from './pdfkit.ts'
import { BLACK } from './text.ts'

export type AnswerWord = CertificateDocument['answer']['word']

/** Side of the square a mark fills. */
export const MARK_SIZE = 7.5

const signs: Record<AnswerWord, { readonly sign?: 'tick' | 'cross'; readonly ring: boolean }> = {
  pass: { sign: 'tick', ring: false },
  'conditional pass': { sign: 'tick', ring: true },
  'conditional fail': { sign: 'cross', ring: true },
  fail: { sign: 'cross', ring: false },
  'not decidable': { ring: true },
  'not judged': { ring: false },
  'not published': { ring: false }
}

/** Words that a reader must not overlook are set heavier. */
export const isAdverse = (word: AnswerWord): boolean =>
  word === 'fail' || word === 'conditional fail'

/** Draw the mark of a verdict with its left edge at `x`, standing on `baseline`. */
export function drawMark(pdf: Pdf, word: AnswerWord, x: number, baseline: number): void {
  const { sign, ring } = signs[word]
  const half = MARK_SIZE / 2
  const centre = { x: x + half, y: baseline - half + 0.8 }
  pdf.strokeColor(BLACK).lineCap('round')
  if (ring) pdf.lineWidth(0.7).circle(centre.x, centre.y, half).stroke()
  const reach = ring ? 1.9 : 2.9
  pdf.lineWidth(ring ? 1 : 1.4)
  if (sign === 'tick') drawTick(pdf, centre.x, centre.y, reach)
  if (sign === 'cross') drawCross(pdf, centre.x, centre.y, reach)
  pdf.lineCap('butt')
}

function drawTick(pdf: Pdf, x: number, y: number, reach: number): void {
  pdf
    .moveTo(x - reach, y + reach * 0.1)
    .lineTo(x - reach * 0.3, y + reach * 0.8)
    .lineTo(x + reach, y - reach * 0.8)
    .stroke()
}

function drawCross(pdf: Pdf, x: number, y: number, reach: number): void {
  const r = reach * 0.85
  pdf.moveTo(x - r, y - r).lineTo(x + r, y + r)
  pdf.moveTo(x - r, y + r).lineTo(x + r, y - r)
  pdf.stroke()
}
