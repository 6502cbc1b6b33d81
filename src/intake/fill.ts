/** Readings into a record that may hold some already: blanks are filled, nothing is written over. */

import {
  type FieldPath,
  fieldText,
  type Place,
  type Problem,
  problemAt,
  quoted
} from '../problem.ts'
import type { Change, RecordValue } from '../records/edit.ts'
import type { Item, Taken } from './items.ts'
import type { Target } from './target.ts'

export interface Filled {
  readonly changes: readonly Change[]
  readonly problems: readonly Problem[]
}

/** The record as it stands. */
export interface Standing {
  readonly data: RecordValue
  readonly at: (path: FieldPath) => Place
}

/**
 * What changes in a record.
 *
 * @param add whether readings may follow others that are there
 */
export function fill(
  standing: Standing,
  target: Target,
  { items, part }: Taken,
  add: boolean
): Filled {
  const around = [...part].map(([field, value]) =>
    fillField(standing, [...target.base, field], value)
  )
  const listed =
    target.key === undefined
      ? fillOrdered(standing, target.list, items, add)
      : fillKeyed(standing, target.list, target.key, items)
  const all = [...around, listed]
  return {
    changes: all.flatMap(({ changes }) => changes),
    problems: all.flatMap(({ problems }) => problems)
  }
}

const nothing: Filled = { changes: [], problems: [] }

/** What stands at a path; undefined where nothing does. */
export const valueAt = (data: RecordValue, path: FieldPath): RecordValue | undefined =>
  path.reduce<RecordValue | undefined>(
    (value, step) =>
      typeof value === 'object' && Object.hasOwn(value, step)
        ? (value as Readonly<Record<string | number, RecordValue>>)[step]
        : undefined,
    data
  )

/** Whether nothing was written: no text anywhere. */
export function isBlank(value: RecordValue | undefined): boolean {
  if (value === undefined || typeof value === 'string') return (value ?? '') === ''
  return Object.values(value).every(isBlank)
}

const same = (a: RecordValue | undefined, b: RecordValue) => JSON.stringify(a) === JSON.stringify(b)

/** One field: filled where it is blank, left where it says the same. */
export function fillField({ data, at }: Standing, path: FieldPath, value: RecordValue): Filled {
  const was = valueAt(data, path)
  if (same(was, value)) return nothing
  if (!isBlank(was)) return { changes: [], problems: [taken(at(path), was!, value)] }
  if (!Array.isArray(was) || !Array.isArray(value))
    return { changes: [{ path, value }], problems: [] }
  return { changes: entryChanges(path, was.length, value as readonly RecordValue[]), problems: [] }
}

/** Blank entries of a list filled one by one, those too many taken out from the end. */
function entryChanges(path: FieldPath, places: number, values: readonly RecordValue[]): Change[] {
  const surplus = Math.max(0, places - values.length)
  return [
    ...values.map((value, index) => ({ path: [...path, index], value })),
    ...Array.from({ length: surplus }, (_, index) => ({
      path: [...path, places - 1 - index],
      value: undefined
    }))
  ]
}

const shown = (value: RecordValue) => (typeof value === 'string' ? quoted(value) : 'others')

const taken = (place: Place, was: RecordValue, value: RecordValue): Problem =>
  problemAt(
    place,
    'ALREADY_RECORDED',
    `is ${shown(was)} in the record, and ${shown(value)} in the file`,
    'find out which is right; blank the field if it is the file'
  )

const groupOf = ({ fields }: Item): RecordValue => Object.fromEntries(fields)

/** Entries that have a name: each into its own, new ones behind the last. */
function fillKeyed(
  standing: Standing,
  list: FieldPath,
  key: string,
  items: readonly Item[]
): Filled {
  const entries = listAt(standing.data, list)
  let next = entries.length
  const filled = items.map(item => {
    const name = item.fields.get(key)
    const index = entries.findIndex(entry => same(valueAt(entry, [key]), name ?? ''))
    if (index < 0)
      return { changes: [{ path: [...list, next++], value: groupOf(item) }], problems: [] }
    return joined(
      [...item.fields].map(([field, value]) => fillField(standing, [...list, index, field], value))
    )
  })
  return joined(filled)
}

const joined = (all: readonly Filled[]): Filled => ({
  changes: all.flatMap(({ changes }) => changes),
  problems: all.flatMap(({ problems }) => problems)
})

const listAt = (data: RecordValue, path: FieldPath): readonly RecordValue[] => {
  const list = valueAt(data, path)
  return Array.isArray(list) ? (list as readonly RecordValue[]) : []
}

/** Entries by their order: into those that wait for these fields, then behind the last. */
function fillOrdered(
  standing: Standing,
  list: FieldPath,
  items: readonly Item[],
  add: boolean
): Filled {
  if (items.length === 0) return nothing
  const entries = listAt(standing.data, list)
  const fields = [...new Set(items.flatMap(item => [...item.fields.keys()]))]
  const isOpen = (entry: RecordValue) => fields.every(field => isBlank(valueAt(entry, [field])))
  if (entries.length === 0)
    return { changes: [{ path: list, value: items.map(groupOf) }], problems: [] }
  const open = [...entries.keys()].filter(index => isOpen(entries[index]!))
  const begun = open.filter(index => !isBlank(entries[index]))
  if (open.length < entries.length && !add) return fillSame(standing, list, items, entries)
  if (begun.length > 0 && begun.length !== items.length)
    return refused(
      standing,
      list,
      `${begun.length} readings wait for ${fields.join(' and ')}, the file has ${items.length}`,
      'take out those that were not done, or complete the file'
    )
  return joined([
    ...items.map((item, index) => {
      const at = open[index] ?? entries.length + index - open.length
      const isNew = open[index] === undefined
      if (isNew) return { changes: [{ path: [...list, at], value: groupOf(item) }], problems: [] }
      return joined(
        [...item.fields].map(([field, value]) => fillField(standing, [...list, at, field], value))
      )
    }),
    {
      changes: open
        .slice(items.length)
        .reverse()
        .map(index => ({ path: [...list, index], value: undefined })),
      problems: []
    }
  ])
}

/** Readings are there: a file that says the same changes nothing, another is refused. */
function fillSame(
  standing: Standing,
  list: FieldPath,
  items: readonly Item[],
  entries: readonly RecordValue[]
): Filled {
  const isSame =
    items.length === entries.length &&
    items.every((item, index) =>
      [...item.fields].every(([field, value]) => same(valueAt(entries[index]!, [field]), value))
    )
  if (isSame) return nothing
  return refused(
    standing,
    list,
    `${fieldText(list)} has readings already`,
    'if these come besides, say --add; if they come instead, blank the old ones'
  )
}

const refused = ({ at }: Standing, list: FieldPath, message: string, hint: string): Filled => ({
  changes: [],
  problems: [problemAt(at(list), 'ALREADY_RECORDED', message, hint)]
})
