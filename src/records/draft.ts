/**
 * A new record from the last one of its kind: same fields, same order, same comments, with what
 * belongs to the old lot left blank.
 */

import { isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml'
import type { SourceFile } from '../problem.ts'
import { type DraftKind, fateOf, keptWhole, mayBeDraft, numberFields } from './draft-fields.ts'
import { identifier } from './fields.ts'

/** A piece of the old text and what stands there in the new. */
interface Edit {
  readonly start: number
  readonly end: number
  readonly text: string
}

/**
 * Text of a new record: the old one edited in place, so that order, spacing and comments stay.
 *
 * A grade, method or mapping is begun as its like stands; a lot's readings and an instrument's calibration
 * are its own. A certificate revised, which gives a reason, stays with its lot.
 *
 * @param previous the last record of the kind, free of errors
 * @param fields first-level fields to set: its number, its date
 */
export function draftFrom(
  previous: SourceFile,
  kind: DraftKind,
  fields: Readonly<Record<string, string>>
): string {
  const source = previous.text.replace(/^\uFEFF/u, '')
  const { contents } = parseDocument(source, { schema: 'failsafe' })
  if (!isMap(contents)) return source
  const edits = contents.items.flatMap(pair => {
    const key = keyOf(pair)
    if (key === 'draft') return [removed(source, pair)]
    if (fields[key] !== undefined)
      return [set(source, pair.value as Node, setText(kind, key, fields[key]))]
    const staysWithLot = key === 'lot' && fields.reason !== undefined
    return keptWhole.has(kind) || staysWithLot ? [] : blankedPair(source, kind, pair)
  })
  const text = applied(source, edits)
  return fields.reason === undefined || contents.has('reason')
    ? text
    : `${text.replace(/\n?$/u, '\n')}reason: ${fields.reason}`.trimEnd() + '\n'
}

/** The date of a lot is followed by the word that it is not finished. */
const setText = (kind: DraftKind, key: string, value: string) =>
  key === 'made' && mayBeDraft.has(kind) ? `${value}\ndraft: yes` : value

/** What a record says of itself: its number, or failing that its file's name; whether it is unfinished. */
export function headOf(
  { path, text }: SourceFile,
  kind: DraftKind
): { readonly number: string; readonly draft: boolean } {
  const { contents } = parseDocument(text, { schema: 'failsafe' })
  const said = (field: string): unknown => (isMap(contents) ? contents.get(field) : undefined)
  const number = said(numberFields[kind])
  return {
    number: typeof number === 'string' && number !== '' ? number : stemOf(path),
    draft: said('draft') === 'yes'
  }
}

const stemOf = (path: string) =>
  path
    .split('/')
    .at(-1)!
    .replace(/\.ya?ml$/u, '')

/** A number cut before its last digits: EB-26-014 is EB-26- and 014. */
export function cutNumber(number: string): { stem: string; digits: string } | undefined {
  const match = /^(.*?)(\d+)$/u.exec(number)
  return match ? { stem: match[1]!, digits: match[2]! } : undefined
}

/**
 * The number after the highest by the workshop's own pattern: EB-26-014 → EB-26-015.
 *
 * @param like number whose pattern is followed; that of the last one that ends in digits by default
 */
export function nextNumber(numbers: readonly string[], like?: string): string | undefined {
  const counted = numbers.flatMap(number => cutNumber(number) ?? [])
  const last = like === undefined ? counted.at(-1) : cutNumber(like)
  if (!last) return undefined
  const highest = Math.max(
    Number(last.digits),
    ...counted.filter(({ stem }) => stem === last.stem).map(({ digits }) => Number(digits))
  )
  return `${last.stem}${String(highest + 1).padStart(last.digits.length, '0')}`
}

/** Why a text cannot number a record; undefined where it can. */
export const numberFault = (number: string): string | undefined =>
  identifier().safeParse(number).error?.issues[0]?.message

const keyOf = ({ key }: Pair) => (isScalar(key) ? String(key.value) : '')

/** Empty every value that was read or decided on the old lot. */
function blankedPair(source: string, kind: DraftKind, pair: Pair): Edit[] {
  const fate = fateOf(kind, keyOf(pair))
  if (fate === 'goes') return [removed(source, pair)]
  if (fate === 'stays' || !pair.value) return []
  return blanked(source, kind, pair.value as Node, '')
}

function blanked(source: string, kind: DraftKind, node: Node, empty: string): Edit[] {
  if (isMap(node)) return node.items.flatMap(pair => blankedPair(source, kind, pair as Pair))
  // An entry of a list needs something written to be one.
  if (isSeq(node)) return node.items.flatMap(item => blanked(source, kind, item as Node, "''"))
  return [replaced(node, empty)]
}

const replaced = (node: Node, text: string): Edit => ({
  start: node.range![0],
  end: node.range![1],
  text
})

/** A value in the place of another, or of a blank right after its colon. */
function set(source: string, node: Node, text: string): Edit {
  const edit = replaced(node, text)
  return source[edit.start - 1] === ':' ? { ...edit, text: ` ${text}` } : edit
}

/** A field with its value: whole lines, or its part of a `{ }` with the comma. */
function removed(source: string, { key, value }: Pair): Edit {
  const start = (key as Node).range![0]
  const end = (value as Node | null)?.range?.[1] ?? (key as Node).range![1]
  const lineStart = source.lastIndexOf('\n', start - 1) + 1
  const alone = source.slice(lineStart, start).trim() === ''
  if (alone) {
    const lineEnd = source.indexOf('\n', Math.max(start, end - 1))
    return { start: lineStart, end: lineEnd === -1 ? source.length : lineEnd + 1, text: '' }
  }
  const comma = /^\s*,\s*/u.exec(source.slice(end))?.[0].length ?? 0
  return { start, end: end + comma, text: '' }
}

/** The text with every edit made, last first so that positions hold. */
const applied = (source: string, edits: readonly Edit[]) =>
  [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce(
      (text, { start, end, text: piece }) => text.slice(0, start) + piece + text.slice(end),
      source
    )
    .replace(/: {2}\}/gu, ': }')
    .replace(/[ \t]+$/gmu, '')
