/** The records one lot's papers rest on: its own, those it names, those they name, and so on. */

import type { SourceFile } from '../problem.ts'
import { parseRecord } from './document.ts'
import { type Kind, kindOf, lotKinds } from './kinds.ts'

interface Named {
  readonly file: SourceFile
  /** Names the record goes by. */
  readonly names: readonly string[]
  /** Every text in it: what it may refer to. */
  readonly texts: ReadonlySet<string>
}

/**
 * Files needed to judge one lot and make its papers, so that a fault in any other record is in
 * nobody's way.
 *
 * @returns undefined where no readable record has that lot number
 */
export function ownChain(files: readonly SourceFile[], lot: string): SourceFile[] | undefined {
  const records = files.map(nameRecord)
  const own = records.filter(({ names }) => names.includes(lot))
  if (own.length === 0) return undefined
  const byName = new Map<string, Named[]>()
  for (const record of records)
    for (const name of record.names) byName.set(name, [...(byName.get(name) ?? []), record])

  const needed = new Set<Named>(records.filter(({ file }) => isForAll(kindOf(file))))
  const queue = [...own, ...records.filter(record => isCertificateOn(record, lot))]
  for (const record of queue) {
    if (needed.has(record)) continue
    needed.add(record)
    for (const text of record.texts) queue.push(...(byName.get(text) ?? []))
  }
  const wanted = new Set([...needed].map(({ file }) => file))
  return files.filter(file => wanted.has(file))
}

/** Numbers of the lots recorded, panels among them, as far as their records can be read. */
export const lotNumbers = (files: readonly SourceFile[]): string[] =>
  files
    .filter(file => [...lotKinds, 'panels'].some(kind => kind === kindOf(file)))
    .flatMap(file => nameRecord(file).names)

/** Kinds of record that every lot's papers rest on. */
const isForAll = (kind: Kind | undefined) => kind === 'producer' || kind === 'translations'

const isCertificateOn = ({ file, texts }: Named, lot: string) =>
  kindOf(file) === 'certificates' && texts.has(lot)

function nameRecord(file: SourceFile): Named {
  const document = parseRecord(file)
  // A file that cannot be read is known by its name, so that its own faults are told when it counts.
  const name = file.path
    .split('/')
    .at(-1)!
    .replace(/\.ya?ml$/u, '')
  if (!document.ok) return { file, names: [name], texts: new Set() }
  const data = document.value.data as Record<string, unknown>
  // What goes by a number may name a lot besides, which is not its own.
  const own = data.number ?? data.lot ?? data.id
  return {
    file,
    names: typeof own === 'string' ? [own] : [],
    texts: new Set(textsOf(data))
  }
}

function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsOf) : []
}
