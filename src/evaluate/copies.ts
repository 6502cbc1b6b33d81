/** Readings that equal another lot's throughout: copied from its record, more likely than not. */

import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import type { Records, Entry } from '../records/types.ts'

interface Readings {
  readonly lot: string
  readonly entry: Entry<unknown>
  readonly field: FieldPath
  readonly what: string
  readonly written: readonly string[]
}

/** Fewer numbers than this agree by chance too often to speak of. */
const TELLING = 4

/** Warn at the later record of each pair whose readings are the same to the last digit. */
export function checkCopies(content: Records): Problem[] {
  const first = new Map<string, Readings>()
  return allReadings(content)
    .filter(({ written }) => written.length >= TELLING)
    .flatMap(readings => {
      const key = JSON.stringify([readings.what, readings.written])
      const other = first.get(key)
      if (!other) first.set(key, readings)
      return other ? [copied(readings, other)] : []
    })
}

const copied = ({ entry, field, what }: Readings, other: Readings): Problem =>
  problemAt(
    entry.keyAt(field),
    'COPIED_READINGS',
    `these ${what} readings equal those of ${other.lot} to the last digit`,
    'enter the readings taken on this lot'
  )

function allReadings({ batches, foils }: Records): Readings[] {
  const ofTests = [...batches, ...foils].flatMap(([lot, entry]) =>
    Object.entries(entry.record.tests ?? {}).map(([test, record]) => ({
      lot,
      entry,
      field: ['tests', test, 'readings'],
      what: test.replace(/[A-Z]/gu, letter => ` ${letter.toLowerCase()}`),
      written: writtenOf(record?.readings)
    }))
  )
  const ofFoils = [...foils].map(([lot, entry]) => ({
    lot,
    entry,
    field: ['sheets'],
    what: 'sheet',
    written: writtenOf(entry.record.sheets)
  }))
  return [...ofTests, ...ofFoils]
}

/** Every quantity inside, as written, in order. */
function writtenOf(value: unknown, found: string[] = []): string[] {
  if (typeof value !== 'object' || value === null) return found
  if ('written' in value && typeof value.written === 'string') found.push(value.written)
  else for (const part of Object.values(value)) writtenOf(part, found)
  return found
}
