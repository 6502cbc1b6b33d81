/** Tables as comma-separated values, small enough for a page. */

const NUMBER = /^-?\d+(?:\.\d+)?$/u

/** Signs a formula begins with, in the full width that some spreadsheets take for them as well. */
const FORMULA = /^[=+\-@\t\r＝＋－＠]/u

/** A text that a spreadsheet would take for a formula gets an apostrophe in front; numbers stay. */
export const harmless = (field: string): string =>
  FORMULA.test(field) && !NUMBER.test(field) ? `'${field}` : field

/** RFC 4180, with the byte order mark that spreadsheets want. */
export const csvOf = (rows: readonly (readonly string[])[]): string =>
  `\uFEFF${rows.map(row => `${row.map(quoted).join(',')}\r\n`).join('')}`

const quoted = (field: string) => {
  const text = harmless(field)
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
