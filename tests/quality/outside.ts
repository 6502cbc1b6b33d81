/** Rows of a CSV file from outside, whose first line names its source. */

import { readFileSync } from 'node:fs'

export type Row = Readonly<Record<string, string>>

/** Every row of `outside/<name>.csv`, by the names of its columns. */
export function rowsOf(name: string): Row[] {
  const text = readFileSync(new URL(`outside/${name}.csv`, import.meta.url), 'utf8')
  const [, header = '', ...lines] = text.trim().split('\n')
  const columns = header.split(',')
  return lines.map(line => {
    const cells = line.split(',')
    return Object.fromEntries(columns.map((column, index) => [column, cells[index] ?? '']))
  })
}
