/** A record, a mapping and a file put together, for tests of what comes of them. */

import { readMapping } from '../../src/intake/mappings.ts'
import { sheetBy } from '../../src/intake/mappings.ts'
import { takeOver, type TakenOver } from '../../src/intake/take-over.ts'
import { targetOf } from '../../src/intake/target.ts'
import { type Checked, formatProblem } from '../../src/problem.ts'
import { kindOf } from '../../src/records/kinds.ts'

export interface Case {
  readonly record: string
  /** Folder of the record: batches, foils, expansions. */
  readonly folder?: string
  readonly mapping: string
  readonly file: string | Uint8Array
  readonly step?: number
  readonly tested?: string
  readonly add?: boolean
}

export const source = { file: 'export.csv', sha256: 'a'.repeat(64), written: '2026-03-14 14:09Z' }

export function takenOver({
  record,
  folder = 'foils',
  mapping,
  file,
  ...wish
}: Case): Checked<TakenOver> {
  const read = readMapping({ path: 'mappings/m.yaml', text: `id: m\n${mapping}` })
  if (!read.ok) return read
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file
  const sheet = sheetBy({ path: 'export.csv', bytes }, read.value)
  if ('code' in sheet) return { ok: false, problems: [sheet] }
  const path = `${folder}/X-1.yaml`
  const kind = kindOf({ path, text: '' })!
  const target = targetOf(kind, read.value.record.fills, (wish.step ?? 1) - 1)
  if (!target) throw new Error('the record has no such part')
  return takeOver({ path, text: record }, sheet, { target, mapping: read.value, source, ...wish })
}

/** The record's new text without the source, or the problems as they are shown. */
export function outcome(one: Case): string {
  const result = takenOver(one)
  if (!result.ok) return result.problems.map(formatProblem).join('\n\n')
  return result.value.text.replace(/^ *sources:\n.*export\.csv.*\n/mu, '')
}
