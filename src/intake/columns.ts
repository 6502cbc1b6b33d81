/** Which columns of a sheet a mapping means, and the lines below their headings. */

import { type Problem, quoted } from '../problem.ts'
import type { Mapping } from '../records/types.ts'
import { unitNamed } from '../metrology/units.ts'
import { type Heading, headingOf, sameHeading } from '../tables/headings.ts'
import { type Cell, cellProblem, isBlankRow, type Sheet } from '../tables/sheet.ts'

export type MappedColumn = Mapping['columns'][number]

/** A column of the file. */
export interface FileColumn extends Heading {
  readonly index: number
  /** Its heading; the first entry below where there is none. */
  readonly cell: Cell
}

export interface Lines {
  readonly sheet: Sheet
  readonly columns: readonly FileColumn[]
  readonly rows: readonly (readonly Cell[])[]
  /** The column a mapping means by a name. */
  readonly named: (name: string) => FileColumn | undefined
}

/** Lines above the headings that instruments write: no more than these are looked through. */
const MOST_ABOVE = 60

/** Every column that a mapping names. */
function namesIn({ columns, reading, skip = {} }: Mapping): string[] {
  const names = [
    ...columns.flatMap(({ column, where = {} }) => [column, ...Object.keys(where)]),
    ...(reading === undefined || reading === ALL_LINES ? [] : [reading]),
    ...Object.keys(skip)
  ]
  return [...new Set(names)]
}

/** Instead of a column that tells readings apart: the file is of one reading. */
export const ALL_LINES = 'all lines'

const isUnitText = (text: string) => unitNamed(text) !== undefined && text !== '1'

const means = ({ text }: Cell, name: string) =>
  sameHeading(text, name) || sameHeading(headingOf(text, isUnitText).name, name)

/** Whether a sheet has every column that a mapping names. */
export const hasColumns = (sheet: Sheet, mapping: Mapping): boolean =>
  !('problems' in linesOf(sheet, mapping))

/** The headings and the lines below them, or what is missing or twice. */
export function linesOf(sheet: Sheet, mapping: Mapping): Lines | { problems: Problem[] } {
  return mapping.file?.headings === false ? bareLines(sheet, mapping) : headedLines(sheet, mapping)
}

function headedLines(sheet: Sheet, mapping: Mapping): Lines | { problems: Problem[] } {
  const names = namesIn(mapping)
  const found = (row: readonly Cell[]) =>
    names.filter(name => row.some(cell => means(cell, name))).length
  const above = sheet.rows.slice(0, MOST_ABOVE)
  const counts = above.map(found)
  const at = counts.indexOf(Math.max(...counts))
  const row = sheet.rows[at] ?? []
  const problems = headingFaults(sheet, row, names)
  if (problems.length > 0) return { problems }
  const unitsBelow = mapping.file?.unitsBelow
  const units = unitsBelow === undefined ? [] : (sheet.rows[at + unitsBelow] ?? [])
  const columns = row.map((cell, index): FileColumn => {
    const heading = headingOf(cell.text, isUnitText)
    const below = units[index]?.text.replace(/^[[(]|[\])]$/gu, '')
    return { ...heading, ...(below ? { unit: below } : {}), index, cell }
  })
  const rows = sheet.rows.slice(at + 1).filter((_, index) => index + 1 !== unitsBelow)
  return lines(sheet, columns, rows, name => row.findIndex(cell => means(cell, name)))
}

/** Columns that are not there, told at once, and each that is there twice. */
function headingFaults(sheet: Sheet, row: readonly Cell[], names: readonly string[]): Problem[] {
  const alike = (name: string) => row.filter(cell => means(cell, name))
  const there = row.flatMap(({ text }) => (text === '' ? [] : [text]))
  const absent = names.filter(name => alike(name).length === 0).map(quoted)
  const first = row.find(({ text }) => text !== '') ?? { range: [0, 1] as const }
  const missing = cellProblem(sheet, first, [], 'MISSING_COLUMN', [
    `no column is headed ${absent.join(' or ')}`,
    `columns here: ${there.slice(0, 12).join(', ')}; is the delimiter, or the mapping, another? A unit in a heading stands in brackets, as in 'Mass [g]'`
  ])
  const twice = names.flatMap(name => {
    const [, second] = alike(name)
    const said = `two columns are headed ${quoted(name)}`
    return second
      ? cellProblem(sheet, second, [], 'MISSING_COLUMN', [
          said,
          'rename one of them where the file is made'
        ])
      : []
  })
  return absent.length > 0 ? [missing, ...twice] : twice
}

/** Without headings columns go by their number. */
function bareLines(sheet: Sheet, mapping: Mapping): Lines | { problems: Problem[] } {
  const first = sheet.rows.find(row => !isBlankRow(row)) ?? []
  const columns = first.map((cell, index): FileColumn => ({ name: String(index + 1), index, cell }))
  const problems = namesIn(mapping)
    .filter(name => !columns.some(column => column.name === name))
    .map(name =>
      cellProblem(sheet, first[0] ?? { range: [0, 1] }, [], 'MISSING_COLUMN', [
        `there is no column ${name}: without headings columns go by their number`,
        `columns here: 1 to ${columns.length}; is the delimiter, or the mapping, another?`
      ])
    )
  if (problems.length > 0) return { problems }
  return lines(sheet, columns, sheet.rows, name => Number(name) - 1)
}

function lines(
  sheet: Sheet,
  columns: readonly FileColumn[],
  rows: readonly (readonly Cell[])[],
  indexOf: (name: string) => number
): Lines {
  const filled = rows.filter(row => !isBlankRow(row))
  return { sheet, columns, rows: filled, named: name => columns[indexOf(name)] }
}

/** Columns with something in them that the mapping says nothing of, and lines that do not fit. */
export function strayColumns({ sheet, columns, rows, named }: Lines, mapping: Mapping): Problem[] {
  const known = new Set(namesIn(mapping).map(name => named(name)?.index))
  const strays = columns
    .filter(({ index }) => !known.has(index) && rows.some(row => (row[index]?.text ?? '') !== ''))
    .map(({ name, cell }) =>
      cellProblem(sheet, cell, [], 'UNMAPPED_COLUMN', [
        `the mapping says nothing of column ${quoted(name)}`,
        `add '- { column: ${name} }' to leave it out, with 'to:' to take it over`
      ])
    )
  return [...strays, ...rows.flatMap(row => unevenRow(sheet, columns.length, row))]
}

/** A line with more entries than headings; or fewer, where a comma parts entries and decimals alike. */
function unevenRow(sheet: Sheet, width: number, row: readonly Cell[]): Problem[] {
  const beyond = row.slice(width).find(({ text }) => text !== '')
  const isUneven = sheet.delimiter === 'comma' && row.length !== width
  const at = beyond ?? (isUneven ? row.at(-1) : undefined)
  if (!at) return []
  return [
    cellProblem(sheet, at, [], 'NOT_A_TABLE', [
      `the line has ${row.length} entries, the headings are ${width}`,
      sheet.delimiter === 'comma'
        ? 'a decimal comma does this in a file parted by commas: export it with semicolons'
        : 'export it anew, each line with an entry for each heading'
    ])
  ]
}
