/** A parsed record against its schema: typed fields, or every fault with its place. */

import { distance } from 'fastest-levenshtein'
import type * as z from 'zod'
import {
  type Checked,
  type FieldPath,
  fieldText,
  type Place,
  type Problem,
  problemAt,
  quoted
} from '../problem.ts'
import type { RecordDocument } from './document.ts'
import type { FaultDetails } from './fields.ts'
import { knownFields } from './known-fields.ts'
import { type Kind, kindNames, type RecordOf, schemas } from './kinds.ts'

/** Check one record against the schema of its kind. */
export function validateRecord<Name extends Kind>(
  document: RecordDocument,
  kind: Name
): Checked<RecordOf<Name>> {
  const schema: z.ZodType = schemas[kind]
  const result = schema.safeParse(document.data)
  if (result.success) return { ok: true, value: result.data as RecordOf<Name>, problems: [] }
  const { issues } = result.error
  const meant = new Set(issues.flatMap(issue => meantFields(kind, issue)))
  const problems = issues.flatMap(issue => problemsOf(document, kind, issue))
  return {
    ok: false,
    problems: problems.filter(
      ({ code, field }) => code !== 'MISSING_FIELD' || !meant.has(fieldText(field))
    )
  }
}

/** The candidate most like `text`, if one is alike enough to be what was meant. */
export function nearestTo(text: string, candidates: Iterable<string>): string | undefined {
  const ranked = [...candidates]
    .map(candidate => ({ candidate, steps: distance(text.toLowerCase(), candidate.toLowerCase()) }))
    .sort((a, b) => a.steps - b.steps)
  const best = ranked[0]
  // Of three letters two others are another word.
  const most = Math.max(Math.min(2, text.length - 2), Math.ceil(text.length / 3))
  return best && best.steps <= most ? best.candidate : undefined
}

/** 'did you mean X?' or the whole choice. */
export function suggestion(text: string, candidates: readonly string[], what: string): string {
  // A number a digit off is another number, seldom a slip.
  const best = /\p{L}/u.test(text) ? nearestTo(text, candidates) : undefined
  if (best !== undefined) return `did you mean ${best}?`
  if (candidates.length === 0) return 'nothing of the kind is recorded yet'
  const shown = candidates.slice(0, 12).join(', ')
  return `${what}: ${shown}${candidates.length > 12 ? ' and others' : ''}`
}

type Issue = z.core.$ZodIssue

/** A choice of more words than this is told by the nearest one alone. */
const MANY = 8

function problemsOf(document: RecordDocument, kind: Kind, issue: Issue): Problem[] {
  const path = issue.path as FieldPath
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map(key => unknownField(document, kind, [...path, key]))
  return [problemOf(document, kind, issue, path)]
}

/** Fields that a misspelt name most likely stands for: they are not missing besides. */
function meantFields(kind: Kind, issue: Issue): string[] {
  if (issue.code !== 'unrecognized_keys') return []
  const path = issue.path as FieldPath
  const known = knownFields(schemas[kind], path)
  return issue.keys.flatMap(key => {
    const best = nearestTo(key, known)
    return best === undefined ? [] : [fieldText([...path, best])]
  })
}

/** 'a batch record', 'an instrument record'. */
const recordOf = (kind: Kind) =>
  `${/^[aeiou]/u.test(kindNames[kind]) ? 'an' : 'a'} ${kindNames[kind]} record`

function unknownField(document: RecordDocument, kind: Kind, path: FieldPath): Problem {
  const key = String(path.at(-1))
  const known = knownFields(schemas[kind], path.slice(0, -1))
  const owner = path.length === 1 ? recordOf(kind) : 'this part of the record'
  return problemAt(
    document.keyPlaceOf(path),
    'UNKNOWN_FIELD',
    `is not a field of ${owner}`,
    suggestion(key, known, 'fields here')
  )
}

function problemOf(document: RecordDocument, kind: Kind, issue: Issue, path: FieldPath): Problem {
  const place = document.placeOf(path)
  const value = valueAt(document.data, path)
  if (value === '' || issue.code === 'too_small')
    return problemAt(place, 'MISSING_FIELD', 'holds nothing', 'fill it in or leave it out')
  if (issue.code === 'custom') {
    const { code, hint } = issue.params as unknown as FaultDetails
    const keyPlace = { ...document.keyPlaceOf(path), field: place.field }
    return problemAt(code === 'MISSING_FIELD' ? keyPlace : place, code, issue.message, hint)
  }
  if (value === undefined) return missing(document, kind, path)
  switch (issue.code) {
    case 'invalid_type':
      return wrongShape(place, issue.expected, value)
    case 'invalid_value': {
      if (typeof value === 'object') return wrongShape(place, 'string', value)
      const words = issue.values.map(String)
      return problemAt(
        place,
        'UNKNOWN_WORD',
        words.length > MANY
          ? `${quoted(String(value))} is not a word known here`
          : `must be one of ${words.join(', ')}, got ${quoted(String(value))}`,
        suggestion(String(value), words, 'words known here')
      )
    }
    default:
      return invalid(place, issue, String(value))
  }
}

const wrongShape = (place: Place, expected: string, value: unknown): Problem =>
  problemAt(
    place,
    'WRONG_TYPE',
    `must be ${shapeNames[expected] ?? 'a text'}, got ${shapeOf(value)}`,
    shapeHints[expected] ?? 'write it after the colon, on one line'
  )

function invalid(place: Place, issue: Issue, value: string): Problem {
  const isAddress = issue.code === 'invalid_format' && issue.format === 'url'
  const message = isAddress ? 'must be a web address' : plain(issue.message)
  const hint = isAddress
    ? 'write the whole address, such as https://workshop.example.org'
    : issue.message.startsWith('holds')
      ? 'delete what is shown as <U+…> and type the text anew'
      : /[^ -~]/u.test(value)
        ? 'type it anew with the letters A to Z: some of these only look like them'
        : /^[a-z]+\d?$/iu.test(value)
          ? 'computers keep this name for themselves: choose another, such as EB-26-041'
          : 'write it with these signs alone, such as EB-26-041'
  return problemAt(place, 'INVALID_VALUE', `${message}, got ${quoted(value)}`, hint)
}

function missing(document: RecordDocument, kind: Kind, path: FieldPath): Problem {
  const name = String(path.at(-1))
  const owner = path.length === 1 ? recordOf(kind) : 'this part of the record'
  const place = document.keyPlaceOf(path)
  const isWritten = place.file.text.slice(...place.range) === name
  return problemAt(
    { ...place, field: path },
    'MISSING_FIELD',
    isWritten ? `is blank: ${owner} needs it` : `is missing: ${owner} needs it`,
    isWritten ? 'fill it in' : `add '${name}:' here`
  )
}

/** A library's sentence in our grammar: no capital, no name of its own. */
const plain = (message: string) =>
  message.startsWith('must') || message.startsWith('holds')
    ? message
    : `is not valid (${message.charAt(0).toLowerCase()}${message.slice(1)})`

const valueAt = (data: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step)
        ? (value as Record<string | number, unknown>)[step]
        : undefined,
    data
  )

const shapeNames: Readonly<Record<string, string>> = {
  object: 'a group of fields',
  array: 'a list',
  string: 'a single value'
}

const shapeHints: Readonly<Record<string, string>> = {
  object: 'write its fields below it, indented, or in { }',
  array: "write each entry below it after '- ', or in [ ]",
  string: 'write one value after the colon'
}

function shapeOf(value: unknown): string {
  if (Array.isArray(value)) return 'a list'
  return typeof value === 'object' ? 'a group of fields' : quoted(String(value))
}
