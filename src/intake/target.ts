/** The part of a record that readings of a file go into. */

import type { FieldPath } from '../problem.ts'
import { fieldShape, type FieldShape } from '../records/field-shape.ts'
import type { Kind } from '../records/kinds.ts'

/** List of a sheet that its places go into, and what a mapping calls their two distances. */
export const PLACES = 'positions'
export const distances = ['x', 'y'] as const

export const isDistance = (field: string): boolean => distances.some(name => name === field)

export interface Target {
  readonly kind: Kind
  /** Group of the part: ['tests', 'ash']. */
  readonly base: FieldPath
  /** Its list of readings: ['tests', 'ash', 'readings']. */
  readonly list: FieldPath
  /** Field that names an entry of the list, where one does. */
  readonly key?: string
  readonly sources: FieldPath
}

/**
 * The part of a record of some kind that a mapping fills, or undefined where such a record has none.
 *
 * @param step position of the process step a log belongs to, from 0
 */
export function targetOf(kind: Kind, fills: string, step = 0): Target | undefined {
  const target = partOf(kind, fills, step)
  return fieldShape(kind, target.list)?.is === 'list' ? target : undefined
}

function partOf(kind: Kind, fills: string, step: number): Target {
  if (fills === 'sheets' || fills === 'thickness') {
    const base = ['measured']
    return { kind, base, list: ['sheets'], key: 'id', sources: [...base, 'sources'] }
  }
  const base = fills !== 'log' ? ['tests', fills] : kind === 'batches' ? ['steps', step] : []
  return {
    kind,
    base,
    list: [...base, fills === 'log' ? 'log' : 'readings'],
    sources: [...base, 'sources']
  }
}

/** Where a value goes: into a field of each reading, or of the part around them. */
export interface Destination {
  readonly level: 'reading' | 'part'
  /** In a record; of a reading, that of the first. */
  readonly path: FieldPath
  readonly field: string
  readonly shape: FieldShape
  /** List of groups it is one part of: the positions of a sheet. */
  readonly within?: string
}

/** What a mapping means by the name of a field. */
export function destinationOf(
  { kind, base, list, key }: Target,
  field: string
): Destination | undefined {
  if (key === 'id' && isDistance(field)) return placeIn(kind, list, field)
  const places = [
    ['reading', [...list, 0, field]],
    ['part', [...base, field]]
  ] as const
  for (const [level, path] of places) {
    const shape = fieldShape(kind, path)
    if (shape && shape.is !== 'group') return { level, path, field, shape }
  }
  return undefined
}

/** A distance of the places of a sheet: as many as it has readings. */
function placeIn(kind: Kind, list: FieldPath, field: string): Destination | undefined {
  const path = [...list, 0, PLACES, 0, field]
  const shape = fieldShape(kind, path)
  return (
    shape && {
      level: 'reading',
      path,
      field,
      within: PLACES,
      shape: { ...shape, is: 'list', isRequired: false }
    }
  )
}
