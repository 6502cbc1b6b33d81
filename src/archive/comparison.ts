/** Several lots beside each other: a row for each quantity that any of them has. */

import { type Difference, differenceOf, type KnownFigure, type KnownLot } from './compare.ts'
import type { ListedQuantity } from './lots.ts'
import { type ScriptWords, scriptWords } from './words.ts'

export interface ComparedCell {
  readonly figure: KnownFigure
  /** From the lot compared with; absent on that lot itself, and where it has no such figure. */
  readonly difference?: Difference
}

export interface ComparedRow {
  readonly quantity: ListedQuantity
  /** One a lot; undefined where it was not measured. */
  readonly cells: readonly (ComparedCell | undefined)[]
}

/**
 * Compare lots with one of them.
 *
 * @param against place of the lot the others are compared with
 */
export function compareLots(
  lots: readonly KnownLot[],
  quantities: readonly ListedQuantity[],
  against: number
): ComparedRow[] {
  const rows = quantities.flatMap(quantity => {
    const figures = lots.map(({ figures }) => figures.find(({ key }) => key === quantity.key))
    if (figures.every(figure => figure === undefined)) return []
    const from = figures[against]
    const cells = figures.map((figure, place): ComparedCell | undefined => {
      if (!figure) return undefined
      return from && place !== against
        ? { figure, difference: differenceOf(figure, from) }
        : { figure }
    })
    return [{ quantity, cells }]
  })
  // What one lot alone has, there is nothing to compare with: it stands last.
  const isShared = ({ cells }: ComparedRow) => cells.filter(cell => cell).length > 1
  return [...rows.filter(isShared), ...rows.filter(row => !isShared(row))]
}

/** '+3.2 ± 5.5 mL/g: no more than they are uncertain' */
export function differenceText(
  { is, printed, uncertainty, notes }: Difference,
  unit: string,
  words: ScriptWords = scriptWords
) {
  const sum = printed === undefined ? '' : `${[printed, '±', uncertainty, unit].join(' ').trim()}: `
  return `${sum}${words[is]}${notes.length > 0 ? ` (${notes.map(note => words[note]).join('; ')})` : ''}`
}

const columns = [
  'quantity',
  'unit',
  'lot',
  'value',
  'U',
  'limit',
  'verdict',
  'method',
  'compared with',
  'difference',
  'U of difference',
  'differ by',
  'note'
]

/** The same as a table for spreadsheets: each lot against each of the others. */
export function comparisonTable(
  lots: readonly KnownLot[],
  quantities: readonly ListedQuantity[]
): string[][] {
  const rows = lots.flatMap((against, place) =>
    compareLots(lots, quantities, place).flatMap(({ quantity, cells }) =>
      cells.flatMap((cell, other) =>
        cell?.difference && other > place
          ? [pairLine(quantity, lots[other]!.lot, cell, cell.difference, against.lot)]
          : []
      )
    )
  )
  const alone = compareLots(lots, quantities, 0).flatMap(({ quantity, cells }) =>
    cells.flatMap((cell, place) => (cell ? [figureLine(quantity, lots[place]!.lot, cell)] : []))
  )
  return [columns, ...alone, ...rows]
}

const plain = (text = '') => text.replace('−', '-')

const figureLine = ({ title, unit }: ListedQuantity, lot: string, { figure }: ComparedCell) => [
  title,
  unit,
  lot,
  plain(figure.value),
  plain(figure.uncertainty),
  plain(figure.limit),
  figure.verdict ?? '',
  figure.method,
  ...['', '', '', '', '']
]

function pairLine(
  quantity: ListedQuantity,
  lot: string,
  cell: ComparedCell,
  difference: Difference,
  against: string
) {
  return [
    ...figureLine(quantity, lot, cell).slice(0, 8),
    against,
    plain(difference.printed).replace('+', ''),
    difference.uncertainty ?? '',
    scriptWords[difference.is],
    difference.notes.map(note => scriptWords[note]).join('; ')
  ]
}
