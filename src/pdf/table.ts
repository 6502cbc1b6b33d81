/** The results table: groups, header rows repeated on each page, rows never split. */

import { type Grid, layGrid } from './grid.ts'
import type { Element } from './pdfkit.ts'
import type { Group } from './results.ts'
import { drawRight, drawRow, type PlannedRow, planRow } from './row.ts'
import type { Sheet } from './sheet.ts'
import {
  drawLine,
  drawLines,
  firstBaseline,
  GREY,
  HAIRLINE,
  heightOf,
  styles,
  wrapText
} from './text.ts'
import type { Words } from './words.ts'

const HEADER_PADDING = 2
const GROUP_GAP = 9

/** Draw all groups at the cursor. */
export function drawResults(sheet: Sheet, groups: readonly Group[], words: Words): void {
  const grid = layGrid(sheet.pdf, groups, sheet.area.left, sheet.right)
  for (const group of groups) drawGroup(sheet, grid, group, words)
}

function drawGroup(sheet: Sheet, grid: Grid, group: Group, words: Words): void {
  const rows = group.rows.map(row => planRow(sheet.pdf, grid, group, row))
  const heading = planHeading(sheet, grid, group.heading)
  sheet.ensureSpace(headerHeight(heading) + rows[0]!.height, group.rows[0]!.title)
  const table = sheet.element(sheet.root, 'Table')
  const header = sheet.element(table, 'TR')
  drawHeader(sheet, grid, group, heading, draw =>
    sheet.tagged(header, 'TH', draw, { scope: 'Column' })
  )
  header.end()
  drawRows(sheet, grid, group, rows, table, words)
  table.end()
  sheet.rule(0.8)
  sheet.y += GROUP_GAP
}

function drawRows(
  sheet: Sheet,
  grid: Grid,
  group: Group,
  rows: readonly PlannedRow[],
  table: Element,
  words: Words
): void {
  rows.forEach((row, index) => {
    if (row.height > sheet.space) {
      sheet.rule(0.8)
      sheet.newPage()
      const heading = planHeading(sheet, grid, `${group.heading}, ${words.continued}`)
      drawHeader(sheet, grid, group, heading, draw => sheet.artifact(draw, 'Pagination'))
      sheet.assertSpace(row.height, group.rows[index]!.title)
    } else if (index > 0) sheet.rule(0.3, HAIRLINE)
    drawRow(sheet, table, grid, row)
  })
}

const planHeading = (sheet: Sheet, grid: Grid, heading: string): string[] =>
  wrapText(sheet.pdf, styles.heading, heading, grid.property.width)

const headerHeight = (heading: readonly string[]): number =>
  heightOf(styles.heading, heading) + 2 * HEADER_PADDING

/** The group's heading over the properties, and the column titles, between two rules. */
function drawHeader(
  sheet: Sheet,
  grid: Grid,
  group: Group,
  heading: readonly string[],
  mark: (draw: () => void) => void
): void {
  const { pdf } = sheet
  const style = { ...styles.smallStrong, colour: GREY }
  if (!sheet.atStart) sheet.rule(0.8)
  const top = sheet.y + HEADER_PADDING
  const baseline = firstBaseline(styles.heading, top)
  mark(() => drawLines(pdf, styles.heading, heading, grid.property.x, top))
  for (const { key, title } of group.columns) {
    const column = grid.columns[key]
    mark(() =>
      column.point === undefined
        ? drawLine(pdf, style, title, column.x, baseline)
        : drawRight(pdf, style, title, column, baseline)
    )
  }
  sheet.y += headerHeight(heading)
  sheet.rule(0.4)
}
