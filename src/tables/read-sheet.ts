/** The bytes of a file to a sheet of cells, or to what it is instead. */

import type { Problem, SourceFile } from '../problem.ts'
import { csvSheet } from './csv.ts'
import { decoded } from './decode.ts'
import { type Delimiter, delimiters, type Dialect, fileProblem, type Sheet } from './sheet.ts'
import { isOldSpreadsheet, isPacked, xlsxSheet } from './xlsx.ts'

/** Larger files are no list of readings that a person could look through. */
export const LARGEST_FILE = 16_000_000

/**
 * Read a file as every sheet it could be: one for each delimiter, where none is named.
 *
 * @param path as problems name it
 * @param isMeant whether a sheet has the columns looked for; asked where the delimiter is open
 */
export function readSheet(
  path: string,
  bytes: Uint8Array,
  dialect: Dialect,
  isMeant: (sheet: Sheet) => boolean
): Sheet | Problem {
  const refuse = (message: string, hint: string) => fileProblem({ path, text: '' }, [message, hint])
  if (bytes.length === 0) return refuse('is empty', 'export it again')
  if (isOldSpreadsheet(bytes))
    return refuse('is a spreadsheet of an older kind, or a locked one', 'save it as .xlsx or CSV')
  if (isPacked(bytes)) return xlsxSheet(path, bytes, dialect.sheet)
  const text = decoded(bytes, dialect.encoding)
  if ('fault' in text) return refuse(...text.fault)
  if (text.text.trim() === '') return refuse('holds nothing but space', 'export it again')
  const file = { path, text: text.text }
  return dialect.delimiter ? csvSheet(file, dialect.delimiter) : delimitedSheet(file, isMeant)
}

/** The one delimiter under which the columns are there; several, where they make the same cells. */
function delimitedSheet(file: SourceFile, isMeant: (sheet: Sheet) => boolean): Sheet | Problem {
  const tried = (Object.keys(delimiters) as Delimiter[]).map(name => csvSheet(file, name))
  const sheets = tried.filter((one): one is Sheet => 'rows' in one)
  const meant = sheets.filter(isMeant)
  if (meant.length === 0) return sheets.length > 0 ? widest(sheets) : tried[0]!
  const [first] = meant
  if (meant.every(sheet => sameCells(sheet, first!))) return first!
  return fileProblem(file, [
    'can be read with more than one delimiter',
    "write 'delimiter: comma', semicolon, tab or bar in the mapping"
  ])
}

/** With what cuts the most cells, the columns that are not there are told best. */
const widest = (sheets: readonly Sheet[]): Sheet =>
  sheets.reduce((best, sheet) => (cellsIn(sheet) > cellsIn(best) ? sheet : best))

const cellsIn = ({ rows }: Sheet) => Math.max(...rows.slice(0, 50).map(({ length }) => length))

const sameCells = (a: Sheet, b: Sheet) =>
  a.rows.length === b.rows.length &&
  a.rows.every((row, at) => {
    const other = b.rows[at]!
    return (
      row.length === other.length && row.every(({ text }, index) => text === other[index]!.text)
    )
  })
