/** A table of texts under a heading: its head repeated on each page, rows never split. Lengths in points. */

import type { TableSection } from '../documents/shipment-types.ts'
import type { Table } from '../documents/types.ts'
import { splitAtPoint } from './grid.ts'
import type { Element, Pdf } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import {
  BLACK,
  drawLine,
  firstBaseline,
  GREY,
  HAIRLINE,
  heightOf,
  type Style,
  styles,
  widthOf,
  wrapText
} from './text.ts'
import type { Words } from './words.ts'

const GAP = 10
/** Between columns where there is room. */
const WIDEST_GAP = 24
const PADDING = 2.5
const AFTER = 8

/** Widest a column of numbers or short words grows before its texts are broken. */
const MOST = 150

const headStyle = { ...styles.smallStrong, colour: GREY }

interface Column {
  readonly x: number
  readonly width: number
  readonly numeric: boolean
  /** Room behind the line of the points of its figures. */
  readonly after: number
}

/** Draw the heading, the table and what is to be said of it at the cursor. */
export function drawTableSection(
  sheet: Sheet,
  { heading, table, texts }: TableSection,
  words: Words,
  level: 'H2' | 'H3' = 'H2'
): void {
  const columns = layColumns(sheet, table)
  const rows = table.rows.map(row => planRow(sheet.pdf, columns, row))
  const titles = planHead(sheet.pdf, columns, table)
  const first = rows[0]?.height ?? 0
  sheet.ensureSpace(styles.lead.leading + 3 + titles.height + first, heading)
  sheet.paragraph(sheet.root, level, level === 'H2' ? styles.lead : styles.heading, heading)
  sheet.y += 3
  const element = sheet.element(sheet.root, 'Table')
  const head = sheet.element(element, 'TR')
  const width = widthOfAll(columns)
  drawCells(sheet, columns, titles, (draw, _index) =>
    sheet.tagged(head, 'TH', draw, { scope: 'Column' })
  )
  head.end()
  sheet.rule(0.4, BLACK, width)
  rows.forEach((row, index) => {
    if (row.height > sheet.space) continueTable(sheet, columns, titles, words)
    else if (index > 0) sheet.rule(0.3, HAIRLINE, width)
    sheet.assertSpace(row.height, table.rows[index]![0] ?? '')
    drawRow(sheet, element, columns, row)
  })
  element.end()
  sheet.rule(0.8, BLACK, width)
  sheet.y += 3
  for (const text of texts) sheet.paragraph(sheet.root, 'P', styles.small, text)
  sheet.y += AFTER
}

/** Cells broken into lines, and the height they take. */
interface Planned {
  readonly cells: readonly { readonly lines: readonly string[]; readonly style: Style }[]
  readonly height: number
}

/** Columns as wide as their texts, apart by a little more where there is room: the eye has to cross from one to the next. */
function layColumns({ pdf, area }: Sheet, { columns, rows }: Table): Column[] {
  const wanted = columns.map(
    ({ title }, index) =>
      Math.max(widthOf(pdf, headStyle, title), widestCell(pdf, columns, rows, index)) + 1
  )
  const gaps = columns.length - 1
  const fitted = fitInto(area.width - GAP * gaps, wanted)
  const left = area.width - sumOf(fitted)
  const gap = Math.min(WIDEST_GAP, gaps > 0 ? left / gaps : 0)
  let x = area.left
  return columns.map(({ numeric }, index) => {
    const after = numeric ? afterPoints(pdf, rows, index) : 0
    const column = { x, width: fitted[index]!, numeric, after }
    x += column.width + gap
    return column
  })
}

/** Rules are no longer than what stands between them. */
const widthOfAll = (columns: readonly Column[]): number => {
  const [first, last] = [columns[0]!, columns.at(-1)!]
  return last.x + last.width - first.x
}

const sumOf = (widths: readonly number[]) => widths.reduce((sum, width) => sum + width, 0)

/** What the widest column must keep for others to be left as they are. */
const LEAST = 40

/**
 * No column wider than it wants. Where there is too little room, none takes more than MOST but the widest,
 * which takes what is left; where that is too little for it, the widest share alike.
 */
function fitInto(room: number, wanted: readonly number[]): number[] {
  if (sumOf(wanted) <= room) return [...wanted]
  const widths = wanted.map(width => Math.min(MOST, width))
  const spare = room - sumOf(widths)
  const widest = wanted.indexOf(Math.max(...wanted))
  const most = widths[widest]!
  if (most + spare >= LEAST)
    return widths.map((width, index) =>
      index === widest ? Math.min(width + spare, wanted[index]!) : width
    )
  let left = room
  for (const [index, width] of [...widths].sort((a, b) => a - b).entries()) {
    const share = left / (widths.length - index)
    if (width > share) return widths.map(one => Math.min(one, share))
    left -= width
  }
  return widths
}

/** Figures reach on both sides of the line of their points. */
function widestCell(
  pdf: Pdf,
  columns: Table['columns'],
  rows: Table['rows'],
  index: number
): number {
  const style = index === 0 ? styles.strong : styles.body
  const widths = rows.map(row => widthOf(pdf, style, row[index] ?? ''))
  if (!columns[index]!.numeric) return Math.max(0, ...widths)
  const before = rows.map(row => widthOf(pdf, style, splitAtPoint(row[index] ?? '')[0]))
  return Math.max(0, ...before) + afterPoints(pdf, rows, index)
}

/** Width of the longest part of a column's figures that stands behind their point. */
const afterPoints = (pdf: Pdf, rows: Table['rows'], index: number): number =>
  Math.max(0, ...rows.map(row => widthOf(pdf, styles.body, splitAtPoint(row[index] ?? '')[1])))

function planned(
  pdf: Pdf,
  columns: readonly Column[],
  texts: readonly string[],
  styleOf: (index: number) => Style
): Planned {
  const cells = columns.map(({ width }, index) => {
    const style = styleOf(index)
    return { lines: wrapText(pdf, style, texts[index] ?? '', width), style }
  })
  const height = Math.max(...cells.map(({ lines, style }) => heightOf(style, lines))) + 2 * PADDING
  return { cells, height }
}

const planRow = (pdf: Pdf, columns: readonly Column[], row: readonly string[]): Planned =>
  planned(pdf, columns, row, index => (index === 0 ? styles.strong : styles.body))

const planHead = (pdf: Pdf, columns: readonly Column[], { columns: heads }: Table): Planned =>
  planned(
    pdf,
    columns,
    heads.map(({ title }) => title),
    () => headStyle
  )

/** The head once more, for the eye alone, at the top of a new page. */
function continueTable(
  sheet: Sheet,
  columns: readonly Column[],
  titles: Planned,
  words: Words
): void {
  const width = widthOfAll(columns)
  sheet.rule(0.8, BLACK, width)
  sheet.newPage()
  sheet.artifact(
    () =>
      drawLine(
        sheet.pdf,
        headStyle,
        words.continued,
        sheet.area.left,
        firstBaseline(headStyle, sheet.y)
      ),
    'Pagination'
  )
  sheet.y += headStyle.leading
  drawCells(sheet, columns, titles, draw => sheet.artifact(draw, 'Pagination'))
  sheet.rule(0.4, BLACK, width)
}

function drawRow(sheet: Sheet, table: Element, columns: readonly Column[], row: Planned): void {
  const element = sheet.element(table, 'TR')
  drawCells(sheet, columns, row, (draw, index) =>
    sheet.tagged(element, index === 0 ? 'TH' : 'TD', draw, index === 0 ? { scope: 'Row' } : {})
  )
  element.end()
}

/** Numbers stand with their points in one line, words begin at their column's left edge. */
function drawCells(
  sheet: Sheet,
  columns: readonly Column[],
  { cells, height }: Planned,
  mark: (draw: () => void, index: number) => void
): void {
  const { pdf, y } = sheet
  cells.forEach(({ lines, style }, index) => {
    const column = columns[index]!
    mark(() => {
      lines.forEach((line, row) => {
        const text = line.trimEnd()
        const left = column.numeric ? numberX(pdf, style, text, column) : column.x
        drawLine(pdf, style, text, left, firstBaseline(style, y + PADDING) + row * style.leading)
      })
    }, index)
  })
  sheet.y += height
}

/** Where a figure starts: its point in the line of points; words, heads and long figures end at the right. */
function numberX(pdf: Pdf, style: Style, text: string, { x, width, after }: Column): number {
  const atRight = x + width - widthOf(pdf, style, text)
  if (!/\d/u.test(text)) return atRight
  const atPoint = x + width - after - widthOf(pdf, style, splitAtPoint(text)[0])
  return atPoint < x ? atRight : atPoint
}
