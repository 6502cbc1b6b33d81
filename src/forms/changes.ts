/** What was filled into a form, as changes of the record it was made from. */

import type { FieldPath } from '../problem.ts'
import type { Change, RecordValue } from '../records/edit.ts'
import { pointer } from './names.ts'
import type { FormPart, GroupPart, ListPart, ValuePart } from './parts.ts'

/** Texts by the names of their fields. */
export type Submitted = ReadonlyMap<string, string>

/** Name of the box that takes a part out. */
export const removalOf = (path: FieldPath): string => `remove:${pointer(path)}`

/** Name of the field that puts a part in. */
export const additionOf = (path: FieldPath): string => `add:${pointer(path)}`

/**
 * The changes, in an order in which no change moves the place of a later one. A field that was not sent
 * stays as it is; so does one that only line breaks or spaces around it tell apart.
 */
export function changesOf(form: GroupPart, sent: Submitted): Change[] {
  const all = form.parts.flatMap(part => changesAt(part, sent))
  const kept = all.filter(({ value }) => value !== undefined)
  return [...kept, ...all.filter(({ value }) => value === undefined).reverse()]
}

/** Parts asked for, as pointers. */
export function additionsOf(form: GroupPart, sent: Submitted): string[] {
  const own = sent.get(additionOf(form.path))?.trim() ?? ''
  const inner = groupsIn(form).flatMap(group => additionsOf(group, sent))
  return own === '' ? inner : [pointer([...form.path, own]), ...inner]
}

const groupsIn = ({ parts }: GroupPart): GroupPart[] => parts.flatMap(nearestGroups)

const nearestGroups = (part: FormPart): GroupPart[] =>
  part.is === 'group' ? [part] : part.is === 'list' ? part.entries.flatMap(nearestGroups) : []

function changesAt(part: FormPart, sent: Submitted): Change[] {
  if (part.canGo && sent.has(removalOf(part.path))) return [{ path: part.path, value: undefined }]
  if (part.is === 'value') return valueChange(part, sent)
  if (part.is === 'list' && part.written > 0) return listChanges(part, sent)
  if (part.is === 'group' && part.isWritten) return part.parts.flatMap(one => changesAt(one, sent))
  const value = newValue(part, sent)
  return value === undefined ? [] : [{ path: part.path, value }]
}

function valueChange(part: ValuePart, sent: Submitted): Change[] {
  const value = textOf(part, sent)
  if (value === part.value || value === part.value.trim()) return []
  // An entry of a list that is blanked is none.
  const isGone = value === '' && part.canGo
  return [{ path: part.path, value: isGone ? undefined : value }]
}

/** What stands in a field now. */
export function textOf({ path, value, isFixed }: ValuePart, sent: Submitted): string {
  const text = sent.get(pointer(path))?.replaceAll('\r\n', '\n')
  return text === undefined || text === value || isFixed ? value : text.trim()
}

function listChanges({ path, entries, written }: ListPart, sent: Submitted): Change[] {
  const old = entries.slice(0, written).flatMap(entry => changesAt(entry, sent))
  const added = entries
    .slice(written)
    .flatMap(entry => newEntry(entry, sent))
    .map((value, index): Change => ({ path: [...path, written + index], value }))
  const gone = old.filter(
    ({ path: at, value }) => value === undefined && at.length === path.length + 1
  )
  // A list that nothing is left of goes as a whole.
  const isEmptied = gone.length === written && added.length === 0
  return isEmptied ? [{ path, value: undefined }] : [...old, ...added]
}

/** What was filled into a part that was empty. */
function newValue(part: FormPart, sent: Submitted): RecordValue | undefined {
  if (part.is === 'value') return textOf(part, sent) || undefined
  if (part.is === 'list') {
    const entries = part.entries.flatMap(entry => newEntry(entry, sent))
    return entries.length > 0 ? entries : undefined
  }
  const fields = part.parts.flatMap(one => {
    const value = newValue(one, sent)
    return value === undefined ? [] : [[String(one.path.at(-1)), value] as const]
  })
  return fields.length > 0 ? Object.fromEntries(fields) : undefined
}

/** An entry, alone in a list so that one that is itself a list stays one. */
function newEntry(part: FormPart, sent: Submitted): RecordValue[] {
  const value = newValue(part, sent)
  return value === undefined ? [] : [value]
}
