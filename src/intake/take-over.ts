/** A file of readings into the record of its lot: the record's new text, or what keeps it from one. */

import { type Checked, type Problem, problemAt, quoted, type SourceFile } from '../problem.ts'
import { parseRecord } from '../records/document.ts'
import { type Change, changed, dataWith, plainData, type RecordValue } from '../records/edit.ts'
import { type FieldShape, valueFault } from '../records/field-shape.ts'
import type { Entry, Mapping } from '../records/types.ts'
import type { Sheet } from '../tables/sheet.ts'
import { type Lines, linesOf, strayColumns } from './columns.ts'
import { fill, fillField, isBlank, type Standing, valueAt } from './fill.ts'
import { styleOf, type Taken, takeItems } from './items.ts'
import { missingDistance } from './places.ts'
import { type Destination, destinationOf, type Target } from './target.ts'
import { thinned } from './thin.ts'
import type { Filling } from './values.ts'

/** The file readings come from, as the record will name it. */
export interface Source {
  readonly file: string
  readonly sha256: string
  /** When it was written, as 2026-03-14 14:09Z. */
  readonly written: string
}

export interface Wish {
  readonly target: Target
  readonly mapping: Entry<Mapping>
  readonly source: Source
  /** Day of the test, where neither record nor file says it. */
  readonly tested?: string | undefined
  readonly add?: boolean | undefined
}

export interface TakenOver {
  readonly text: string
  readonly readings: number
  readonly changes: readonly Change[]
}

/** Take a sheet's readings over. The record's own faults are told where it is checked. */
export function takeOver(record: SourceFile, sheet: Sheet, wish: Wish): Checked<TakenOver> {
  const document = parseRecord(record)
  if (!document.ok) return document
  const lines = linesOf(sheet, wish.mapping.record)
  if ('problems' in lines) return { ok: false, problems: lines.problems }
  const { fillings, problems } = fillingsOf(lines, wish)
  const found = [...problems, ...strayColumns(lines, wish.mapping.record)]
  if (found.length > 0) return { ok: false, problems: found }
  const taken = readingsIn(sheet, lines, fillings, wish)
  if ('problems' in taken) return { ok: false, problems: taken.problems }
  const standing: Standing = { data: plainData(record.text), at: document.value.placeOf }
  return written(record, standing, taken, wish)
}

/** What each column of the mapping fills; a field that is not there is told in the mapping. */
export function fillingsOf(lines: Lines, { mapping, target }: Pick<Wish, 'mapping' | 'target'>) {
  const problems: Problem[] = []
  const fillings = mapping.record.columns.flatMap((mapped, index): Filling[] => {
    const column = lines.named(mapped.column)
    if (mapped.to === undefined || !column) return []
    const to = destinationOf(target, mapped.to)
    if (to) return [{ mapped, column, to }]
    problems.push(noField(mapping, ['columns', index, 'to'], mapped.to))
    return []
  })
  const lacking = missingDistance(fillings)
  if (lacking !== undefined)
    problems.push(
      problemAt(
        mapping.at(['columns']),
        'MISSING_COLUMN',
        `has a column for one distance of a place and none for '${lacking}'`,
        `add the column of '${lacking}', or leave both out with '{ column: … }'`
      )
    )
  return { fillings, problems }
}

const noField = ({ at }: Entry<Mapping>, path: (string | number)[], name: string): Problem =>
  problemAt(
    at(path),
    'UNKNOWN_FIELD',
    `${quoted(name)} is no field that this part of the record has`,
    'name it as the record does, such as thickness'
  )

function readingsIn(
  sheet: Sheet,
  lines: Lines,
  fillings: readonly Filling[],
  wish: Wish
): Taken | { problems: Problem[] } {
  const { mapping, target } = wish
  const style = styleOf(lines, mapping.record, fillings)
  if ('code' in style) return { problems: [style] }
  const reader = { sheet, kind: target.kind, style }
  const taken = takeItems(reader, lines, mapping.record, fillings, target.key)
  if ('problems' in taken) return taken
  const constants = constantsOf(wish)
  if ('problems' in constants) return constants
  if (taken.items.length === 0 && taken.part.size === 0)
    return {
      problems: [
        problemAt(
          { file: sheet.file, field: [], range: [0, 1] },
          'NOT_A_TABLE',
          'has no line with a reading',
          'check that it is the right file'
        )
      ]
    }
  return thinnedOut({ ...withConstants(taken, constants) }, wish)
}

type Constant = { readonly to: Destination; readonly value: RecordValue }

/** Fields that the mapping sets, and the day stated for the test. */
function constantsOf({
  mapping,
  target,
  tested
}: Wish): readonly Constant[] | { problems: Problem[] } {
  const problems: Problem[] = []
  const set = Object.entries(mapping.record.set ?? {}).flatMap(([field, text]): Constant[] => {
    const to = destinationOf(target, field)
    const fault = to && valueFault(target.kind, pathOf(to), text)
    if (!to) problems.push(noField(mapping, ['set', field], field))
    else if (fault)
      problems.push(problemAt(mapping.at(['set', field]), fault.code, fault.message, fault.hint))
    return to ? [{ to, value: asList(to.shape, text) }] : []
  })
  if (problems.length > 0) return { problems }
  const day = tested === undefined ? undefined : destinationOf(target, 'tested')
  return day ? [...set, { to: day, value: tested! }] : set
}

const pathOf = ({ path, shape }: Destination) => (shape.is === 'list' ? [...path, 0] : path)

const asList = ({ is }: FieldShape, text: string): RecordValue => (is === 'list' ? [text] : text)

/** A value of the file goes before one that the mapping sets. */
function withConstants({ items, part }: Taken, constants: readonly Constant[]): Taken {
  const of = (level: Destination['level']) =>
    constants
      .filter(({ to }) => to.level === level)
      .map(({ to, value }): [string, RecordValue] => [to.field, value])
  return {
    items: items.map(item => ({ ...item, fields: new Map([...of('reading'), ...item.fields]) })),
    part: new Map([...of('part'), ...part])
  }
}

function thinnedOut(taken: Taken, { mapping }: Wish): Taken | { problems: Problem[] } {
  const every = mapping.record.every_s
  if (!every) return taken
  const items = thinned(taken.items, every.value)
  if (items) return { ...taken, items }
  return {
    problems: [
      problemAt(
        mapping.at(['every']),
        'INVALID_VALUE',
        'needs moments that can be told apart, as 14:05:30 or 90 s',
        "map the column of the time to 'at', with its unit, or take 'every' out"
      )
    ]
  }
}

/** The record with the readings, and where they came from. */
function written(
  record: SourceFile,
  standing: Standing,
  taken: Taken,
  { target, source, add }: Wish
): Checked<TakenOver> {
  const before = valueAt(standing.data, target.sources)
  const entries = Array.isArray(before) ? (before as readonly RecordValue[]) : []
  if (entries.some(entry => valueAt(entry, ['sha256']) === source.sha256))
    return {
      ok: false,
      problems: [
        problemAt(
          standing.at(target.sources),
          'ALREADY_RECORDED',
          `these readings of ${quoted(source.file)} were taken over before`,
          'nothing is left to do'
        )
      ]
    }
  const { changes, problems } = fill(standing, target, taken, add ?? false)
  if (problems.length > 0) return { ok: false, problems }
  const named = fillField({ ...standing, data: {} }, [...target.sources, entries.length], {
    ...source
  })
  const all = inOnePiece(standing, target, [...changes, ...named.changes])
  return {
    ok: true,
    value: { text: changed(record.text, all), readings: taken.items.length, changes: all },
    problems: []
  }
}

/** A part that was not there is written as a whole, in the manner of new ones. */
function inOnePiece(
  { data }: Standing,
  { base }: Target,
  changes: readonly Change[]
): readonly Change[] {
  if (base.length === 0 || !isBlank(valueAt(data, base))) return changes
  const isInside = ({ path }: Change) => base.every((step, at) => path[at] === step)
  const value = valueAt(dataWith(data, changes.filter(isInside)), base)
  const others = changes.filter(change => !isInside(change))
  return value === undefined ? changes : [{ path: base, value }, ...others]
}
