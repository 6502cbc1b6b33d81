/** Text with delimiters to cells that know where they stand. */

import { CsvError, parse } from 'csv-parse/sync'
import type { SourceFile } from '../problem.ts'
import { type Cell, type Delimiter, delimiters, fileProblem, type Sheet } from './sheet.ts'
import type { Problem } from '../problem.ts'

interface RawRecord {
  readonly record: readonly string[]
  readonly raw: string
}

/** The cells of a text, or what keeps it from being a table. */
export function csvSheet(file: SourceFile, delimiter: Delimiter): Sheet | Problem {
  try {
    const records = parse(file.text, {
      delimiter: delimiters[delimiter],
      record_delimiter: '\n',
      relax_column_count: true,
      raw: true,
      info: true
    }) as unknown as readonly RawRecord[]
    return { file, rows: placed(records, delimiters[delimiter]), delimiter }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error
    return quoteFault(file, error)
  }
}

function placed(records: readonly RawRecord[], delimiter: string): Cell[][] {
  let at = 0
  return records.map(({ record, raw }) => {
    const ranges = rangesIn(raw, delimiter, at)
    at += raw.length
    return record.map((text, index) => ({ text: text.trim(), range: ranges[index] ?? [at, at] }))
  })
}

/** Where the cells of one record stand, quotes around them left out. */
function rangesIn(raw: string, delimiter: string, at: number): [number, number][] {
  const ranges: [number, number][] = []
  let [start, isQuoted] = [0, false]
  const end = raw.endsWith('\n') ? raw.length - 1 : raw.length
  for (let index = 0; index <= end; index++) {
    if (raw[index] === '"') isQuoted = !isQuoted
    if (index < end && (isQuoted || raw[index] !== delimiter)) continue
    const isWrapped = raw[start] === '"'
    const [from, to] = isWrapped ? [start + 1, index - 1] : [start, index]
    ranges.push([at + from, at + Math.max(to, from + 1)])
    start = index + 1
  }
  return ranges
}

/** A quote that opens or closes in the wrong place, told on its line. */
function quoteFault(file: SourceFile, error: CsvError): Problem {
  const line = typeof error['lines'] === 'number' ? error['lines'] : 1
  const start = file.text.split('\n', line - 1).reduce((sum, text) => sum + text.length + 1, 0)
  const message =
    error.code === 'CSV_QUOTE_NOT_CLOSED'
      ? 'a quote is opened here and never closed'
      : 'a quote stands inside an entry'
  return {
    ...fileProblem(file, [
      message,
      'write a quote within an entry twice (""), the entry in quotes'
    ]),
    range: [start, start + 1]
  }
}
