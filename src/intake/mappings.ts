/** The saved mappings of a workshop, and which of them a file is laid out by. */

import { type Checked, type Problem, type SourceFile } from '../problem.ts'
import { parseRecord } from '../records/document.ts'
import { kindOf } from '../records/kinds.ts'
import type { Entry, Mapping } from '../records/types.ts'
import { validateRecord } from '../records/validate.ts'
import { readSheet } from '../tables/read-sheet.ts'
import type { Sheet } from '../tables/sheet.ts'
import { hasColumns } from './columns.ts'

/** A file as it arrived. */
export interface Arrived {
  /** As problems name it. */
  readonly path: string
  readonly bytes: Uint8Array
}

/** A mapping from its file. */
export function readMapping(file: SourceFile): Checked<Entry<Mapping>> {
  const document = parseRecord(file)
  if (!document.ok) return document
  const record = validateRecord(document.value, 'mappings')
  if (!record.ok) return record
  const { placeOf, keyPlaceOf } = document.value
  return {
    ok: true,
    value: { record: record.value, file, at: placeOf, keyAt: keyPlaceOf },
    problems: []
  }
}

/** Every mapping that can be read, and what is wrong with the others. */
export function mappingsIn(files: readonly SourceFile[]) {
  const read = files.filter(file => kindOf(file) === 'mappings').map(readMapping)
  return {
    mappings: read.flatMap(one => (one.ok ? [one.value] : [])),
    problems: read.flatMap((one): readonly Problem[] => (one.ok ? [] : one.problems))
  }
}

/** A file as a mapping says it is written. */
export function sheetBy({ path, bytes }: Arrived, { record }: Entry<Mapping>): Sheet | Problem {
  const { encoding, delimiter, sheet } = record.file ?? {}
  return readSheet(path, bytes, { encoding, delimiter, sheet }, one => hasColumns(one, record))
}

/** Mappings of one part whose columns a file has. */
export const fittingMappings = (
  arrived: Arrived,
  mappings: readonly Entry<Mapping>[],
  fills: string
): Entry<Mapping>[] =>
  mappings.filter(mapping => {
    if (mapping.record.fills !== fills) return false
    const sheet = sheetBy(arrived, mapping)
    return 'rows' in sheet && hasColumns(sheet, mapping.record)
  })
