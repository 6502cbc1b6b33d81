/** Where the columns of the results stand: one grid for all groups. Lengths in points. */

import type { Pdf } from './pdfkit.ts'
import type { Cell, ColumnKey, Group } from './results.ts'
import { MARK_SIZE } from './marks.ts'
import { styles, type Style, widthOf, wordsOf } from './text.ts'

export interface Column {
  readonly x: number
  readonly width: number
  /** Where decimal points stand; absent in columns of words. */
  readonly point?: number
}

export interface Grid {
  readonly property: Column
  readonly columns: Readonly<Record<ColumnKey, Column>>
}

/** Space between columns. */
export const GAP = 10

/** From a verdict's mark to its word. */
export const MARK_GAP = 3.5

const order: readonly ColumnKey[] = ['unit', 'n', 'value', 'uncertainty', 'limit', 'verdict']

/** Widest a column may be; a longer text is broken into lines at its spaces. */
const widest: Record<ColumnKey, number> = {
  unit: 46,
  n: 22,
  value: 62,
  uncertainty: 50,
  limit: 72,
  verdict: 88
}

/** Narrowest the property may become before figures are broken into lines, too. */
const NARROWEST_PROPERTY = 90

const isNumeric = (key: ColumnKey): boolean => key !== 'unit' && key !== 'verdict'

/** A number in two parts, cut where its decimal sign stands: '0.95 to 1.05' → '0.95 to 1', '.05'. */
export function splitAtPoint(text: string): readonly [before: string, after: string] {
  const point = [...text.matchAll(/\d(?=[.,]\d)/g)].at(-1)
  const end = point ? point.index + 1 : text.search(/\D*$/)
  return [text.slice(0, end), text.slice(end)]
}

export const cellStyle = (cell: Cell): Style => styles[cell.weight ?? 'body']

/**
 * The grid for these groups, as narrow as their texts allow; the property gets the rest. A figure
 * is not broken, which could be misread, unless so many are so long that no property would fit.
 */
export function layGrid(pdf: Pdf, groups: readonly Group[], left: number, right: number): Grid {
  const needs = order.map(key => needOf(pdf, groups, key))
  const whole = placeColumns(
    needs.map(need => ({ ...need, width: widthFor(need) })),
    left,
    right
  )
  if (whole.property.width >= NARROWEST_PROPERTY) return whole
  return placeColumns(
    needs.map(need => ({ ...need, width: Math.min(need.whole, widest[need.key]) })),
    left,
    right
  )
}

interface Need {
  readonly key: ColumnKey
  /** Width of the longest text. */
  readonly whole: number
  /** Width of the longest part that has no place to be broken at. */
  readonly unbroken: number
  /** Width of the longest part after a decimal point. */
  readonly after: number
}

const widthFor = ({ key, whole, unbroken }: Need): number =>
  Math.max(unbroken, Math.min(whole, widest[key]))

function placeColumns(
  needs: readonly (Need & { readonly width: number })[],
  left: number,
  right: number
): Grid {
  let edge = right
  const columns = {} as Record<ColumnKey, Column>
  for (const { key, width, after } of [...needs].reverse()) {
    columns[key] = { x: edge - width, width, ...(isNumeric(key) && { point: edge - after }) }
    edge -= width + GAP
  }
  return { property: { x: left, width: edge - left }, columns }
}

function needOf(pdf: Pdf, groups: readonly Group[], key: ColumnKey): Need {
  const using = groups.filter(({ columns }) => columns.some(column => column.key === key))
  const titles = using.map(({ columns }) => columns.find(column => column.key === key)!.title)
  const cells = using.flatMap(({ rows }) => rows.map(row => row.cells[key]!))
  const titleWidths = titles.map(title => widthOf(pdf, styles.smallStrong, title))
  const cellWidths = cells.map(cell => markWidth(cell) + widthOf(pdf, cellStyle(cell), cell.text))
  const underWidths = cells.map(({ under }) => (under ? widthOf(pdf, styles.small, under) : 0))
  const words = cells.flatMap(cell =>
    wordsOf(cell.text).map(word => markWidth(cell) + widthOf(pdf, cellStyle(cell), word))
  )
  const [before, after] = isNumeric(key) ? aroundPoints(pdf, cells) : [0, 0]
  return {
    key,
    whole: Math.max(...titleWidths, ...cellWidths, ...underWidths, before + after),
    unbroken: Math.max(...titleWidths, ...words, 0),
    after
  }
}

/** Room a verdict's mark takes before its word. */
export const markWidth = (cell: Cell): number => (cell.mark ? MARK_SIZE + MARK_GAP : 0)

/** Widths of the longest parts before and after a decimal point. */
function aroundPoints(pdf: Pdf, cells: readonly Cell[]): readonly [before: number, after: number] {
  const parts = cells
    .filter(({ text }) => /\d/.test(text))
    .map(cell => splitAtPoint(cell.text).map(part => widthOf(pdf, cellStyle(cell), part)))
  return [
    Math.max(0, ...parts.map(([before]) => before!)),
    Math.max(0, ...parts.map(([, after]) => after!))
  ]
}
