/** Names of other records that a field may take, for choosing from. */

import type { FieldPath, SourceFile } from '../problem.ts'
import { type Kind, kindOf, lotKinds } from '../records/kinds.ts'

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
  lot: lotKinds,
  lots: lotKinds,
  certificate: ['certificates'],
  shipment: ['shipments']
}

/** Fields that name a part of another record, each by where those names stand. */
const partsNamed: Readonly<Record<string, { readonly kind: Kind; readonly names: RegExp }>> = {
  container: { kind: 'materials', names: /[{-] *number: *['"]?([^'"#,}\s]+)/gu },
  vessel: { kind: 'producer', names: /\bvessel: *['"]?([^'"#,}\s]+)/gu }
}

/** Parts of a record that take something from the containers of a material. */
const takesFrom = new Set<FieldPath[number] | undefined>(['charge', 'lost'])

/**
 * Names are offered under this: 'instruments'. Undefined where a field names nothing else.
 *
 * @param own field that holds the record's own number
 */
export function referenceOf(path: FieldPath, own: string): string | undefined {
  const [first] = path
  if (path.length === 1 && first === own) return undefined
  const steps = path.filter(step => typeof step === 'string')
  const last = steps.at(-1) ?? ''
  if (last === 'container' && !takesFrom.has(first)) return undefined
  if (Object.hasOwn(partsNamed, last) || Object.hasOwn(kindsNamed, last)) return last
  return steps.at(-2) === 'instruments' ? 'instruments' : undefined
}

/** All names under a reference, in order, each once. */
export function namesFor(reference: string, files: readonly SourceFile[]): string[] {
  const part = partsNamed[reference]
  if (part)
    return inOrder(
      files
        .filter(file => kindOf(file) === part.kind)
        .flatMap(({ text }) => [...text.matchAll(part.names)].map(([, name]) => name!))
    )
  const wanted = kindsNamed[reference] ?? []
  const names = files.flatMap(file => {
    const kind = kindOf(file)
    return kind && wanted.includes(kind) ? (recordName(file) ?? []) : []
  })
  return inOrder(names)
}

const inOrder = (names: readonly string[]): string[] => [...new Set(names)].sort()

/**
 * What a record is called, read off the line its number stands on: every form asks it of every record,
 * and reading each as a whole takes seconds where there are hundreds.
 */
export function recordName(file: SourceFile): string | undefined {
  const field = kindOf(file) === 'certificates' ? 'number' : 'lot|id|number'
  return new RegExp(`^(?:${field}):[ \\t]*['"]?([^'"#\\s]+)`, 'mu').exec(file.text)?.[1]
}
