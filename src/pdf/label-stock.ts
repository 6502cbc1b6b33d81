/** Label stock as its user describes it: paper, grid, sizes. Lengths in millimetres. */

import type { LabelStock } from './label.ts'

const papers = { A4: [210, 297], Letter: [215.9, 279.4] } as const

const NUMBER = String.raw`(\d{1,3}(?:\.\d{1,3})?)`
const PAIR = String.raw`${NUMBER}\s*x\s*${NUMBER}(?:\s*mm)?`

const PATTERN = new RegExp(
  String.raw`^(A4|Letter)\s+(\d{1,2})\s*x\s*(\d{1,2})\s+of\s+${PAIR}\s+at\s+${PAIR}(?:\s+every\s+${PAIR})?$`,
  'u'
)

/** How stock is described. */
export const stockForm = '"A4 2x4 of 99 x 68 at 6 x 12.5 every 99 x 68"'

/** Overhang that is no more than rounding of the stock's figures. */
const ROUNDING_mm = 0.05

/**
 * Read a description: paper, columns × rows, width × height of a label, left × upper margin, and the
 * distance from each label to the next where labels do not touch.
 *
 * @returns the stock, or what is wrong with the description
 */
export function readStock(text: string): LabelStock | string {
  const match = PATTERN.exec(text.trim().replace(/\s+/gu, ' '))
  if (!match) return `write stock as ${stockForm}, in mm`
  const paper = papers[match[1] === 'A4' ? 'A4' : 'Letter']
  const [columns, rows, width, height, left, top, across, down] = match
    .slice(2)
    .map(part => (part === undefined ? undefined : Number(part)))
  const stock: LabelStock = {
    paper,
    columns: columns!,
    rows: rows!,
    label: [width!, height!],
    first: [left!, top!],
    pitch: [across ?? width!, down ?? height!]
  }
  return faultIn(stock) ?? stock
}

function faultIn({ paper, columns, rows, label, first, pitch }: LabelStock): string | undefined {
  if (columns < 1 || rows < 1) return 'there is no label on the sheet'
  const counts = [columns, rows] as const
  for (const side of [0, 1] as const) {
    const name = side === 0 ? 'across' : 'down'
    if (counts[side] > 1 && pitch[side] < label[side])
      return `labels would overlap ${name}: one every ${pitch[side]} mm, each ${label[side]} mm`
    const end = first[side] + (counts[side] - 1) * pitch[side] + label[side]
    if (end > paper[side] + ROUNDING_mm)
      return `labels would reach ${Math.round(end * 100) / 100} mm ${name} on paper of ${paper[side]} mm`
  }
  return undefined
}
