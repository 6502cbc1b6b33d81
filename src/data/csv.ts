/** Tables as comma-separated values that spreadsheets and programs read alike. */

import { stringify } from 'csv-stringify/sync'
import { harmless } from '../archive/plain-csv.ts'

/**
 * A table as CSV by RFC 4180: CRLF behind each line, a field in quotes where it holds a comma, a quote
 * or a line end, quotes doubled.
 *
 * A text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a carriage
 * return, as OWASP's page on CSV injection lists them, from memory) gets an apostrophe in front. Plain
 * numbers stay as they are, those below zero too.
 *
 * @param rows every row with as many fields as there are columns
 */
export const csvText = (columns: readonly string[], rows: readonly (readonly string[])[]): string =>
  csvLines([columns, ...rows])

/** Some lines of such a table. */
export const csvLines = (rows: readonly (readonly string[])[]): string =>
  stringify(
    rows.map(row => row.map(harmless)),
    // Left to itself it quotes for its own line end, CR LF, and not for either sign alone.
    { record_delimiter: '\r\n', quoted_match: /[\r\n]/u }
  )
