/** Names of other records that a field may take, for choosing from. */

import type { FieldPath, SourceFile } from '../problem.ts'
import { type Kind, kindOf } from '../records/kinds.ts'

/** Fields that name records, each with the kinds of them. */
const kindsNamed: Readonly<Record<string, readonly Kind[]>> = {
  grade: ['grades'],
  to: ['grades'],
  material: ['materials'],
  adds: ['materials'],
  method: ['methods'],
  titrant: ['titrants'],
  instrument: ['instruments'],
  instruments: ['instruments'],
  furnace: ['instruments'],
  lot: ['batches', 'expansions', 'foils', 'materials'],
  lots: ['batches', 'expansions', 'foils', 'materials'],
  certificate: ['certificates'],
  shipment: ['shipments']
}

/** Names are offered under this: 'instruments'. Undefined where a field names no record. */
export function referenceOf(path: FieldPath): string | undefined {
  const steps = path.filter(step => typeof step === 'string')
  // The record's own number is no reference.
  if (steps.length === 1 && path[0] === 'lot') return undefined
  return [steps.at(-1), steps.at(-2) === 'instruments' ? 'instruments' : undefined].find(
    (name): name is string => name !== undefined && Object.hasOwn(kindsNamed, name)
  )
}

/** All names under a reference, in order, each once. */
export function namesFor(reference: string, files: readonly SourceFile[]): string[] {
  const wanted = kindsNamed[reference] ?? []
  const names = files.flatMap(file => {
    const kind = kindOf(file)
    return kind && wanted.includes(kind) ? (recordName(file) ?? []) : []
  })
  return [...new Set(names)].sort()
}

/**
 * What a record is called, read off the line its number stands on: every form asks it of every record,
 * and reading each as a whole takes seconds where there are hundreds.
 */
export function recordName(file: SourceFile): string | undefined {
  const field = kindOf(file) === 'certificates' ? 'number' : 'lot|id|number'
  return new RegExp(`^(?:${field}):[ \\t]*['"]?([^'"#\\s]+)`, 'mu').exec(file.text)?.[1]
}
