/**
 * Records changed in place: only the fields that change are written anew, so that order, spacing and
 * every comment stay as their author left them.
 */

import {
  isMap,
  isScalar,
  isSeq,
  Lexer,
  type Node,
  type Pair,
  parseDocument,
  type YAMLMap
} from 'yaml'
import type { FieldPath } from '../problem.ts'
import {
  addedEntries,
  addedField,
  replaced,
  replacedEntry,
  type Splice,
  withoutEntry,
  withoutField
} from './splices.ts'
import type { RecordValue } from './value-text.ts'

export type { RecordValue }

/** A field and what is to stand there; undefined takes the field or entry out. */
export interface Change {
  readonly path: FieldPath
  readonly value: RecordValue | undefined
}

/**
 * The text of a record with changes made one after the other. A list grows by a change at the position
 * behind its last entry; a field blanked stays, with nothing behind its colon.
 *
 * @param text a record without faults of syntax
 * @throws Error where the result would not read as the changes say, or would lack a comment
 */
export function changed(text: string, changes: readonly Change[]): string {
  const mark = text.startsWith('\uFEFF') ? '\uFEFF' : ''
  const isCrLf = text.includes('\r\n')
  const plain = text.slice(mark.length).replaceAll('\r\n', '\n')
  const result = inRuns(changes).reduce(withRun, plain)
  refuseLoss(plain, result, changes)
  return mark + (isCrLf ? result.replaceAll('\n', '\r\n') : result)
}

/** Changes that put one entry after the other behind a list are made at once. */
function inRuns(changes: readonly Change[]): Change[][] {
  const runs: Change[][] = []
  for (const change of changes) {
    const run = runs.at(-1)
    const last = run?.at(-1)
    if (run && last && follows(last, change)) run.push(change)
    else runs.push([change])
  }
  return runs
}

function follows(last: Change, { path, value }: Change): boolean {
  const [end, before] = [path.at(-1), last.path.at(-1)]
  return (
    typeof end === 'number' &&
    typeof before === 'number' &&
    end === before + 1 &&
    value !== undefined &&
    last.value !== undefined &&
    path.length === last.path.length &&
    path.slice(0, -1).every((step, at) => step === last.path[at])
  )
}

function withRun(text: string, run: readonly Change[]): string {
  const { contents } = parseDocument(text, { schema: 'failsafe' })
  const [first, ...others] = run
  const values = run.map(({ value }) => value ?? '')
  const list = first!.path.slice(0, -1).reduce<unknown>(stepInto, contents)
  const isBehind = isSeq(list) && others.length > 0 && first!.path.at(-1) === list.items.length
  if (others.length > 0 && !isBehind)
    return others.reduce((sofar, change) => withRun(sofar, [change]), withRun(text, [first!]))
  const splice = isBehind
    ? addedEntries(text, list, values)
    : spliceFor(text, contents, first!.path, first!.value)
  return splice ? text.slice(0, splice.start) + splice.text + text.slice(splice.end) : text
}

const stepInto = (node: unknown, step: string | number): unknown =>
  isMap(node) ? pairOf(node, step)?.value : isSeq(node) ? node.items[Number(step)] : undefined

/** Go down to the last thing on the path that is written, and change that. */
function spliceFor(
  text: string,
  node: Node | null,
  [step, ...rest]: FieldPath,
  value: RecordValue | undefined
): Splice | undefined {
  const isLast = rest.length === 0
  if (isMap(node)) {
    const pair = pairOf(node, step)
    if (!pair)
      return value === undefined
        ? undefined
        : addedField(text, node, String(step), nested(rest, value))
    if (isLast && value === undefined) return withoutField(text, node, pair)
    if (isLast || isNothing(pair.value))
      return replaced(text, node, pair, nested(rest, value ?? ''))
    return spliceFor(text, pair.value as Node, rest, value)
  }
  if (!isSeq(node) || typeof step !== 'number') throw new Error(`no field at ${String(step)}`)
  const item = node.items[step] as Node | undefined
  if (!item)
    return value === undefined ? undefined : addedEntries(text, node, [nested(rest, value)])
  if (isLast && value === undefined) return withoutEntry(text, node, item)
  if (isLast || isNothing(item)) return replacedEntry(text, node, item, nested(rest, value ?? ''))
  return spliceFor(text, item, rest, value)
}

const pairOf = (map: YAMLMap, step: string | number | undefined): Pair | undefined =>
  map.items.find(({ key }) => isScalar(key) && String(key.value) === String(step)) as
    Pair | undefined

/** Whether nothing is written: no value, or the two quotes that keep a place in a list. */
const isNothing = (node: unknown): boolean =>
  node === null || node === undefined || (isScalar(node) && String(node.value ?? '') === '')

/** A value inside the groups and lists that lead to it. */
const nested = (path: FieldPath, value: RecordValue): RecordValue =>
  path.reduceRight<RecordValue>(
    (inner, step) => (typeof step === 'number' ? [inner] : { [step]: inner }),
    value
  )

/** What a record says, with nothing for a blank: compared, whatever the spacing. */
export function plainData(text: string): RecordValue {
  const { contents } = parseDocument(text.replaceAll('\r\n', '\n'), { schema: 'failsafe' })
  return dataOf(contents)
}

function dataOf(node: unknown): RecordValue {
  if (isMap(node))
    return Object.fromEntries(
      node.items.map(({ key, value }) => [isScalar(key) ? String(key.value) : '', dataOf(value)])
    )
  if (isSeq(node)) return node.items.map(dataOf)
  return isScalar(node) ? String(node.value ?? '') : ''
}

function refuseLoss(before: string, after: string, changes: readonly Change[]): void {
  const expected = dataWith(plainData(before), changes)
  if (JSON.stringify(plainData(after)) !== JSON.stringify(expected))
    throw new Error('a changed record does not read as it was changed')
  if (changes.some(({ value }) => value === undefined)) return
  const left = commentsIn(after)
  for (const comment of commentsIn(before))
    if (!left.delete(comment)) throw new Error(`a changed record lost the comment ${comment}`)
}

/** What a record says once changes are made. */
export const dataWith = (data: RecordValue, changes: readonly Change[]): RecordValue =>
  changes.reduce((sofar, { path, value }) => withValue(sofar, path, value), data)

function withValue(
  data: RecordValue,
  path: FieldPath,
  value: RecordValue | undefined
): RecordValue {
  const [step, ...rest] = path
  if (step === undefined) return value ?? ''
  const isGone = rest.length === 0 && value === undefined
  if (Array.isArray(data)) {
    const list = data as readonly RecordValue[]
    const at = Number(step)
    if (isGone) return list.filter((_, index) => index !== at)
    const inner = at < list.length ? withValue(list[at]!, rest, value) : nested(rest, value ?? '')
    return at < list.length ? list.with(at, inner) : value === undefined ? list : [...list, inner]
  }
  if (typeof data === 'string') return value === undefined ? data : nested(path, value)
  const group = data as { readonly [field: string]: RecordValue }
  const key = String(step)
  if (isGone) return Object.fromEntries(Object.entries(group).filter(([name]) => name !== key))
  const has = Object.hasOwn(group, key)
  if (!has && value === undefined) return data
  return { ...group, [key]: has ? withValue(group[key]!, rest, value) : nested(rest, value ?? '') }
}

/** Every comment of a text, each with how often it stands there made unlike. */
function commentsIn(text: string): Set<string> {
  const comments = new Set<string>()
  let before = ''
  for (const token of new Lexer().lex(text)) {
    if (token.startsWith('#') && before !== '\u001F') {
      let name = token.trim()
      while (comments.has(name)) name += ' '
      comments.add(name)
    }
    before = token
  }
  return comments
}
