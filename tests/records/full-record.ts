/** A record with every field its schema knows, each with a value it takes and a comment of its own. */

import { fieldShape, valueFault } from '../../src/records/field-shape.ts'
import { type Kind, schemas } from '../../src/records/kinds.ts'
import { knownFields } from '../../src/records/known-fields.ts'
import type { FieldPath } from '../../src/problem.ts'

/** Values to try, until the field takes one. */
const candidates = (unit: string | undefined) => [
  ...(unit === undefined ? [] : unit === '1' ? ['1', '2'] : [`1 ${unit}`]),
  '2026-03-14',
  'yes',
  '1',
  'X-1',
  'a'.repeat(64),
  '1 g',
  '300 µm',
  '90 s',
  'https://workshop.example/'
]

const wordsOf = (message: string) => /^must be one of (.*), got /u.exec(message)?.[1]?.split(', ')

function valueAt(kind: Kind, path: FieldPath): string {
  const unit = fieldShape(kind, path)?.unit
  const words = wordsOf(valueFault(kind, path, '?')?.message ?? '')
  const taken = [...(words ?? []), ...candidates(unit)].find(
    text => valueFault(kind, path, text) === undefined
  )
  if (taken === undefined) throw new Error(`no value for ${kind} ${path.join('.')}`)
  return taken
}

/** Lines of a value, without the name before it; a group's fields stand below. */
function linesOf(kind: Kind, path: FieldPath, name: string): string[] {
  const shape = fieldShape(kind, path)!
  const head = (rest = '') => `${name}:${rest} # of ${path.join('.')}`
  if (shape.is === 'value') return [head(` ${valueAt(kind, path)}`)]
  const inner = shape.is === 'list' ? [...path, 0] : path
  const isPlain = shape.is === 'list' && fieldShape(kind, inner)!.is !== 'group'
  if (isPlain) return [head(), `  - ${valueAt(kind, inner)}`]
  const below = fieldsOf(kind, inner)
  if (shape.is === 'list')
    return [head(), ...below.map((line, index) => `${index === 0 ? '  - ' : '    '}${line}`)]
  return [head(), ...below.map(line => `  ${line}`)]
}

const fieldsOf = (kind: Kind, path: FieldPath): string[] =>
  names(kind, path).flatMap(name => linesOf(kind, [...path, name], name))

/** Of a choice of names such as quantities two are enough; a group without any takes one. */
function names(kind: Kind, path: FieldPath): string[] {
  const known = knownFields(schemas[kind], path)
  if (known.length === 0) return ['some']
  return known.length > 20 && path.length > 0 ? known.slice(0, 2) : known
}

export const fullRecord = (kind: Kind): string => `${fieldsOf(kind, []).join('\n')}\n`
