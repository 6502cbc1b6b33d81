/** One row of the results: its lines and height, then its drawing. Lengths in points. */

import { type Column, cellStyle, type Grid, GAP, markWidth, splitAtPoint } from './grid.ts'
import { drawMark } from './marks.ts'
import type { Element, ElementOptions, Pdf } from './pdfkit.ts'
import type { Cell, ColumnKey, Group, Note, TableRow } from './results.ts'
import type { Sheet } from './sheet.ts'
import {
  drawLine,
  drawLines,
  firstBaseline,
  heightOf,
  type Style,
  styles,
  widthOf,
  wrapText
} from './text.ts'

interface PlannedCell {
  readonly key: ColumnKey
  readonly cell: Cell
  readonly lines: readonly string[]
  readonly under: readonly string[]
}

interface PlannedNote {
  readonly note: Note
  readonly lines: readonly string[]
  /** From the row's top. */
  readonly top: number
}

/** A row broken into lines. */
export interface PlannedRow {
  readonly title: readonly string[]
  readonly cells: readonly PlannedCell[]
  readonly notes: readonly PlannedNote[]
  readonly height: number
}

/** Space above and below a row's text. */
const PADDING = 2.5

/** Columns whose second line stands beside the notes; notes end where these begin. */
const BESIDE_NOTES: readonly ColumnKey[] = ['uncertainty', 'limit', 'verdict']

const noteStyle = (note: Note): Style => (note.strong ? styles.smallStrong : styles.small)

/** Break a row into lines, as it stands in a group's columns. */
export function planRow(pdf: Pdf, grid: Grid, group: Group, row: TableRow): PlannedRow {
  const title = wrapText(pdf, styles.strong, row.title, grid.property.width)
  const cells = group.columns.map(({ key }) => planCell(pdf, grid.columns[key], key, row))
  const bottomOf = (within: readonly PlannedCell[]) => Math.max(0, ...within.map(cellHeight))
  const besideNotes = (planned: PlannedCell) => BESIDE_NOTES.includes(planned.key)
  let top =
    PADDING + Math.max(heightOf(styles.strong, title), bottomOf(cells.filter(c => !besideNotes(c))))
  const notesWidth = grid.columns.uncertainty.x - GAP - grid.property.x
  const notes = row.notes.map(note => {
    const lines = wrapText(pdf, noteStyle(note), note.text, notesWidth)
    const planned = { note, lines, top }
    top += heightOf(noteStyle(note), lines)
    return planned
  })
  return { title, cells, notes, height: Math.max(top, PADDING + bottomOf(cells)) + PADDING }
}

/** Draw a planned row at the cursor, tagged under `table`. */
export function drawRow(sheet: Sheet, table: Element, grid: Grid, row: PlannedRow): void {
  const { pdf } = sheet
  const top = sheet.y + PADDING
  const element = sheet.element(table, 'TR')
  const title = () => drawLines(pdf, styles.strong, row.title, grid.property.x, top)
  drawParts(sheet, element, 'TH', [title, ...notesOf(sheet, grid, row, 'property')], {
    scope: 'Row'
  })
  for (const planned of row.cells) {
    const column = grid.columns[planned.key]
    drawMarkOf(sheet, planned, column, top)
    const notes = planned.key === 'verdict' ? notesOf(sheet, grid, row, 'verdict') : []
    drawParts(sheet, element, 'TD', [...partsOf(pdf, column, planned, top), ...notes])
  }
  element.end()
  sheet.y += row.height
}

/** Draw a text that ends at a column's right edge. */
export function drawRight(pdf: Pdf, style: Style, text: string, column: Column, y: number): void {
  drawLine(pdf, style, text, column.x + column.width - widthOf(pdf, style, text.trimEnd()), y)
}

function planCell(pdf: Pdf, column: Column, key: ColumnKey, row: TableRow): PlannedCell {
  const cell = row.cells[key]!
  const width = column.width - markWidth(cell)
  const under = cell.under ? wrapText(pdf, styles.small, cell.under, column.width) : []
  return { key, cell, lines: wrapText(pdf, cellStyle(cell), cell.text, width), under }
}

const cellHeight = ({ cell, lines, under }: PlannedCell): number =>
  heightOf(cellStyle(cell), lines) + heightOf(styles.small, under)

/** A cell of one text, or of several that must not run together when read aloud. */
function drawParts(
  sheet: Sheet,
  row: Element,
  tag: 'TH' | 'TD',
  parts: readonly (() => void)[],
  options?: ElementOptions
): void {
  const cell = sheet.element(row, tag, options)
  if (parts.length === 1) cell.add(parts[0]!)
  else for (const part of parts) sheet.tagged(cell, 'P', part)
  cell.end()
}

const notesOf = (sheet: Sheet, grid: Grid, row: PlannedRow, of: Note['of']): (() => void)[] =>
  row.notes
    .filter(({ note }) => note.of === of)
    .map(({ note, lines, top }) => {
      const y = sheet.y + top
      return () => drawLines(sheet.pdf, noteStyle(note), lines, grid.property.x, y)
    })

function drawMarkOf(sheet: Sheet, { cell }: PlannedCell, column: Column, top: number): void {
  const { mark } = cell
  const baseline = firstBaseline(styles.body, top)
  if (mark) sheet.artifact(() => drawMark(sheet.pdf, mark, column.x, baseline))
}

/** The cell's text, and the smaller line below it if there is one. */
function partsOf(pdf: Pdf, column: Column, planned: PlannedCell, top: number): (() => void)[] {
  const { cell, lines, under } = planned
  const style = cellStyle(cell)
  const { point } = column
  const x = column.x + markWidth(cell)
  const underTop = top + heightOf(style, lines)
  const text = () =>
    point === undefined
      ? drawLines(pdf, style, lines, x, top)
      : drawNumber(pdf, style, lines, { ...column, point }, top)
  return under.length === 0
    ? [text]
    : [text, () => drawEnding(pdf, styles.small, under, column, underTop)]
}

/** A number with its decimal point in the column's line of points; words and long texts at the right. */
function drawNumber(
  pdf: Pdf,
  style: Style,
  lines: readonly string[],
  column: Required<Column>,
  top: number
): void {
  const [text = ''] = lines
  const x = column.point - widthOf(pdf, style, splitAtPoint(text)[0])
  if (lines.length === 1 && /\d/.test(text) && x >= column.x - 0.1)
    drawLine(pdf, style, text, x, firstBaseline(style, top))
  else drawEnding(pdf, style, lines, column, top)
}

function drawEnding(
  pdf: Pdf,
  style: Style,
  lines: readonly string[],
  column: Column,
  top: number
): void {
  const baseline = firstBaseline(style, top)
  lines.forEach((line, index) =>
    drawRight(pdf, style, line, column, baseline + index * style.leading)
  )
}
