/**
 * Where the fields of a record stand in its text.
 *
 * Found by a second parse, the first time a problem needs a place: most records never do.
 */

import { isCollection, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml'
import type { FieldPath, Place, SourceFile } from '../problem.ts'

export type Range = readonly [start: number, end: number]

/** Place of a field, or of the nearest thing around it that is written. */
export type Positions = (field: FieldPath, wanted: 'key' | 'value') => Place

interface Spot {
  readonly key?: Range
  readonly value: Range
}

type Spots = Map<string, Spot>

/** Find every field of a record that parses. */
export function positionsIn(file: SourceFile): Positions {
  const spots: Spots = new Map()
  const { contents } = parseDocument(file.text, { schema: 'failsafe', prettyErrors: false })
  if (contents) collect(spots, contents, [])
  return (field, wanted) => {
    const written = field.reduce<(string | number)[]>(
      (path, step) => [...path, writtenStep(spots, path, step)],
      []
    )
    return { file, field: written, range: nearest(spots, written, wanted) }
  }
}

export const rangeOf = (node: Node | null): Range => [node?.range?.[0] ?? 0, node?.range?.[1] ?? 0]

/** A range never empty, so that a caret has something to stand under. */
export const filled = ([start, end]: Range): Range => [start, Math.max(end, start + 1)]

const spotKey = (field: FieldPath) => JSON.stringify(field)

function collect(spots: Spots, node: Node, path: FieldPath): void {
  if (isSeq(node))
    for (const [index, item] of (node.items as Node[]).entries()) {
      const child = [...path, index]
      spots.set(spotKey(child), { value: filled(rangeOf(item)) })
      collect(spots, item, child)
    }
  if (isMap(node)) for (const pair of node.items as Pair[]) collectPair(spots, pair, path)
}

function collectPair(spots: Spots, pair: Pair, path: FieldPath): void {
  const child = [...path, isScalar(pair.key) ? String(pair.key.value) : '']
  const key = filled(rangeOf(pair.key as Node | null))
  const node = pair.value as Node | null
  if (node) collect(spots, node, child)
  // A group or list below its field's name is shown by the name.
  const value = node && !(isCollection(node) && !node.flow) ? filled(rangeOf(node)) : key
  spots.set(spotKey(child), { key, value })
}

/** A typed field name (`mass_g`) as the record has it (`mass`). */
function writtenStep(spots: Spots, parent: FieldPath, step: string | number): string | number {
  if (typeof step === 'number' || spots.has(spotKey([...parent, step]))) return step
  const bare = step.replace(/_.*$/u, '')
  const kebab = bare.replace(/[A-Z]/gu, letter => `-${letter.toLowerCase()}`)
  return [bare, kebab].find(name => spots.has(spotKey([...parent, name]))) ?? kebab
}

/** The range of a field; for one that is not written, the key of the nearest one around it. */
function nearest(spots: Spots, field: FieldPath, wanted: 'key' | 'value'): Range {
  const own = spots.get(spotKey(field))
  if (own) return (wanted === 'key' ? own.key : undefined) ?? own.value
  for (let length = field.length - 1; length > 0; length--) {
    const spot = spots.get(spotKey(field.slice(0, length)))
    if (spot) return spot.key ?? [spot.value[0], spot.value[0] + 1]
  }
  const [first] = spots.values()
  return first?.key ?? [0, 1]
}
