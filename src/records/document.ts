/**
 * YAML text to a plain tree that still knows where each field was written.
 *
 * Every scalar stays the text it was: YAML's own numbers would make 99.0 of 99 and a number of lot
 * 0123. Anchors, aliases, merge keys and tags are refused by name, for they hide where a figure
 * comes from.
 */

import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml'
import {
  type Checked,
  type FieldPath,
  type Place,
  type Problem,
  problemAt,
  quoted,
  type SourceFile
} from '../problem.ts'
import { controlProblems } from './control-characters.ts'
import { filled, type Positions, positionsIn, type Range, rangeOf } from './positions.ts'
import { syntaxProblems } from './syntax.ts'

export interface RecordDocument {
  readonly file: SourceFile
  /** Maps, lists and strings; a field with nothing written in it is absent. */
  readonly data: unknown
  /** Where the value of a field stands, or of the nearest thing around it that is written. */
  placeOf(field: FieldPath): Place
  /** Where the field's own name stands. */
  keyPlaceOf(field: FieldPath): Place
}

/** Everything collected on one walk over the YAML tree. */
interface Walk {
  readonly file: SourceFile
  readonly problems: Problem[]
}

/** A file that is no record as it stands, and what of it can be made out all the same. */
export interface Unparsed {
  readonly ok: false
  readonly problems: readonly Problem[]
  /** What is written, as far as it goes. */
  readonly data?: unknown
  /** The record that was meant, where nothing but commas stood in the way. */
  readonly meant?: RecordDocument
}

/** Parse one file. Its problems are all of the YAML kind: nothing is known yet of what it records. */
export function parseRecord(
  source: SourceFile
): Extract<Checked<RecordDocument>, { ok: true }> | Unparsed {
  const file = { ...source, text: source.text.replace(/^\uFEFF/u, '') }
  const controls = controlProblems(file)
  if (controls.length > 0) return { ok: false, problems: controls }
  const document = parseDocument(file.text, {
    schema: 'failsafe',
    prettyErrors: false,
    // 'silent' would also be silent about a second document in the file.
    logLevel: 'error'
  })
  const walk: Walk = { file, problems: [] }
  const data = document.contents ? valueOf(walk, document.contents, []) : undefined
  const tooDeep = walk.problems.find(({ message }) => message === TOO_DEEP)
  if (tooDeep) return { ok: false, problems: [tooDeep] }
  walk.problems.push(...syntaxProblems(file, document))
  if (walk.problems.length === 0 && !isMap(document.contents))
    walk.problems.push(notARecord(file, document.contents))
  const { problems } = walk
  if (problems.length > 0) {
    const hadOnlyCommas = problems.every(({ code }) => code === 'COMMA_DECIMAL')
    return { ok: false, problems, data, ...(hadOnlyCommas && { meant: positioned(file, data) }) }
  }
  return { ok: true, value: positioned(file, data), problems: [] }
}

function notARecord(file: SourceFile, contents: Node | null): Problem {
  const start = contents?.range?.[0] ?? 0
  const line = file.text.slice(start).split('\n', 1)[0]!.trimEnd()
  return problemAt(
    { file, field: [], range: [start, start + Math.max(1, line.length)] },
    'NOT_A_RECORD',
    isSeq(contents)
      ? 'the file holds a list, not a record'
      : isScalar(contents) && contents.value !== ''
        ? `the file holds a text, not a record, got ${quoted(line)}`
        : 'the file holds no fields',
    "write the record as fields, one a line, such as 'lot: EB-26-041'"
  )
}

/** The tree with its positions, looked up only where a problem has to be shown. */
function positioned(file: SourceFile, data: unknown): RecordDocument {
  let positions: Positions | undefined
  const place = (field: FieldPath, wanted: 'key' | 'value'): Place => {
    positions ??= positionsIn(file)
    return positions(field, wanted)
  }
  return {
    file,
    data,
    placeOf: field => place(field, 'value'),
    keyPlaceOf: field => place(field, 'key')
  }
}

/** Levels a record has at most, with room to spare: past them there is a slip or an attack. */
const DEEPEST = 20

const TOO_DEEP = 'groups and lists stand one inside the other deeper than in any record'

function valueOf(walk: Walk, node: Node, path: FieldPath): unknown {
  if (path.length > DEEPEST) return refuseDepth(walk, node)
  refuseFeatures(walk, node, path)
  if (isMap(node)) return mapOf(walk, node.items as Pair[], path)
  if (isSeq(node)) return listOf(walk, node.items as Node[], path)
  return isScalar(node) ? String(node.value ?? '') : undefined
}

function listOf(walk: Walk, items: readonly Node[], path: FieldPath): unknown[] {
  const data = items.map((item, index) => valueOf(walk, item, [...path, index]))
  for (const [index, item] of items.entries())
    if (isSplitDecimal(walk, items[index - 1], item))
      // Both, so that every other entry keeps its place.
      data[index - 1] = data[index] = refuseSplit(walk, items[index - 1]!, item, path)
  return data
}

/** `[0,04 mL]` reads as two entries, 0 and 04 mL, with nothing but the comma between them. */
function isSplitDecimal({ file }: Walk, before: Node | undefined, item: Node): boolean {
  if (!isScalar(before) || !isScalar(item)) return false
  return (
    /^[+-]?\d+$/u.test(String(before.value)) &&
    /^\d+(\s*\S+)?$/u.test(String(item.value)) &&
    file.text.slice(rangeOf(before)[1], rangeOf(item)[0]) === ','
  )
}

/** @returns what was meant */
function refuseSplit({ file, problems }: Walk, before: Node, item: Node, path: FieldPath): string {
  const range: Range = [rangeOf(before)[0], rangeOf(item)[1]]
  const written = file.text.slice(...range)
  const meant = written.replace(',', '.')
  problems.push(
    problemAt(
      { file, field: path, range },
      'COMMA_DECIMAL',
      `has a comma where the decimal point belongs, got ${quoted(written)}`,
      `write ${quoted(meant)}, or a space after the comma between two entries`
    )
  )
  return meant
}

function refuseDepth({ file, problems }: Walk, node: Node): undefined {
  problems.push(
    problemAt(
      { file, field: [], range: filled(rangeOf(node)) },
      'YAML_SYNTAX',
      TOO_DEEP,
      'check brackets and indentation'
    )
  )
  return undefined
}

function mapOf(walk: Walk, pairs: readonly Pair[], path: FieldPath): Record<string, unknown> {
  const data: Record<string, unknown> = {}
  for (const [index, pair] of pairs.entries()) {
    if (!isScalar(pair.key) || pair.key.value === null || pair.key.value === '') {
      refuseKey(walk, pair.key as Node | null, path)
      continue
    }
    const key = String(pair.key.value)
    const child = [...path, key]
    refuseFeatures(walk, pair.key as Node, child)
    if (isCommaDecimal(pairs[index - 1], pair)) {
      const meant = refuseComma(walk, pairs[index - 1]!, pair, path)
      setField(data, keyOf(pairs[index - 1]!), meant)
      continue
    }
    if (key === '<<')
      refuse(walk, child, filled(rangeOf(pair.key)), "merge keys ('<<') are not used in records")
    const node = pair.value as Node | null
    const value = node ? valueOf(walk, node, child) : ''
    if (value !== '') setField(data, key, value)
  }
  return data
}

/** Set a field whatever its name: '__proto__' assigned would be none. */
function setField(data: Record<string, unknown>, key: string, value: unknown): void {
  if (key === '__proto__')
    Object.defineProperty(data, key, { value, enumerable: true, configurable: true })
  else data[key] = value
}

/** A field needs a plain name: none, or a list or group in its place, is YAML no record uses. */
function refuseKey(walk: Walk, key: Node | null, path: FieldPath): void {
  if (isAlias(key)) return refuseFeatures(walk, key, path)
  const place = { file: walk.file, field: path, range: filled(rangeOf(key)) }
  const message = isScalar(key) || !key ? 'a field has no name' : 'a name of a field must be a word'
  walk.problems.push(problemAt(place, 'YAML_FEATURE', message, "write 'name: value'"))
}

/** `{ mass: 25,00 g }` reads as mass 25 and a field named '00 g' with nothing in it. */
function isCommaDecimal(before: Pair | undefined, pair: Pair): boolean {
  return (
    before !== undefined &&
    pair.value === null &&
    isScalar(pair.key) &&
    /^\d+(\s*\S+)?$/u.test(String(pair.key.value)) &&
    isScalar(before.value) &&
    /^[+-]?\d+$/u.test(String(before.value.value))
  )
}

const keyOf = ({ key }: Pair): string => (isScalar(key) ? String(key.value) : '')

/** @returns what was meant */
function refuseComma(walk: Walk, before: Pair, pair: Pair, path: FieldPath): string {
  const [start] = rangeOf(before.value as Node)
  const [, end] = rangeOf(pair.key as Node)
  const written = walk.file.text.slice(start, end)
  const meant = written.replace(/,\s*/u, '.')
  walk.problems.push(
    problemAt(
      { file: walk.file, field: [...path, keyOf(before)], range: [start, end] },
      'COMMA_DECIMAL',
      `has a comma where the decimal point belongs, got ${quoted(written)}`,
      `write ${quoted(meant)}; a comma ends an entry inside { }`
    )
  )
  return meant
}

function refuseFeatures(walk: Walk, node: Node, path: FieldPath): void {
  if (!isAlias(node) && !node.anchor && !node.tag) return
  const range = rangeOf(node)
  if (isAlias(node))
    return refuse(
      walk,
      path,
      range,
      `aliases (${quoted(`*${node.source}`)}) are not used in records`
    )
  for (const [what, sign] of [
    ['anchors', node.anchor && `&${node.anchor}`],
    ['tags', node.tag && shortTag(node.tag)]
  ] as const) {
    if (!sign) continue
    const start = walk.file.text.lastIndexOf(sign, range[0])
    const place: Range = start < 0 ? filled(range) : [start, start + sign.length]
    refuse(walk, path, place, `${what} (${quoted(sign)}) are not used in records`, 'take it out')
  }
}

const shortTag = (tag: string) => tag.replace('tag:yaml.org,2002:', '!!')

function refuse(
  { problems, file }: Walk,
  field: FieldPath,
  range: Range,
  message: string,
  hint = 'write the value out where it is meant'
): void {
  problems.push(problemAt({ file, field, range }, 'YAML_FEATURE', message, hint))
}
