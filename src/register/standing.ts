/** What the events of a log come to: per certificate revision, and per key. */

import type { EventOf, LogLine } from './events.ts'

/** When and where something was entered. */
export interface Entered {
  /** Number of the log's line. */
  readonly n: number
  readonly date: string
}

type Told<Kind extends 'drawn' | 'withdrawn' | 'signed' | 'voided' | 'key-retired'> = Entered &
  Omit<EventOf<Kind>, 'is'>

/** One revision of a certificate, with all that was entered about it. */
export interface Revision extends Entered, Omit<EventOf<'issued'>, 'is'> {
  /** Why it was amended; none in the first revision. */
  readonly reason?: string
  readonly drawn?: Told<'drawn'>
  readonly withdrawn?: Told<'withdrawn'>
  readonly signatures: readonly Told<'signed'>[]
}

export interface Key extends Entered, Omit<EventOf<'key-added'>, 'is'> {
  readonly retired?: Told<'key-retired'>
}

/** Everything a log says, line after line entered by `enter`. */
export interface Standing {
  /** By `numberKey`; the revisions of a number in order. */
  readonly certificates: ReadonlyMap<string, readonly Revision[]>
  /** By the fingerprint of the document. */
  readonly byData: ReadonlyMap<string, Revision>
  /** Given up where two computers drew one number, by the fingerprint of the document. */
  readonly voided: ReadonlyMap<string, Told<'voided'>>
  readonly keys: ReadonlyMap<string, Key>
}

/** A standing while a log is being read. */
export interface Book extends Standing {
  readonly certificates: Map<string, readonly Revision[]>
  readonly byData: Map<string, Revision>
  readonly voided: Map<string, Told<'voided'>>
  readonly keys: Map<string, Key>
}

export const emptyBook = (): Book => ({
  certificates: new Map(),
  byData: new Map(),
  voided: new Map(),
  keys: new Map()
})

/** Numbers that differ in case only would share a file on many disks: they are one. */
export const numberKey = (number: string): string => number.toLowerCase()

export const revisionsOf = (standing: Standing, number: string): readonly Revision[] =>
  standing.certificates.get(numberKey(number)) ?? []

export const revisionOf = (
  standing: Standing,
  number: string,
  revision: number
): Revision | undefined => revisionsOf(standing, number)[revision - 1]

/** The revision that took a revision's place. */
export const successorOf = (standing: Standing, revision: Revision): Revision | undefined =>
  revisionOf(standing, revision.number, revision.revision + 1)

export type State = 'current' | 'superseded' | 'withdrawn'

/** What has become of a revision; one that was superseded is not also withdrawn. */
export const stateOf = (standing: Standing, revision: Revision): State =>
  successorOf(standing, revision) ? 'superseded' : revision.withdrawn ? 'withdrawn' : 'current'

/** Enter a line that keeps the rules. */
export function enter(book: Book, { n, date, event }: LogLine): void {
  switch (event.is) {
    case 'issued':
    case 'amended':
      return addRevision(book, { ...event, n, date, signatures: [] })
    case 'drawn':
      return change(book, event, () => ({ drawn: { ...event, n, date } }))
    case 'withdrawn':
      return change(book, event, () => ({ withdrawn: { ...event, n, date } }))
    case 'signed':
      return change(book, event, ({ signatures }) => ({
        signatures: [...signatures, { ...event, n, date }]
      }))
    case 'voided':
      return void book.voided.set(event.data, { ...event, n, date })
    case 'key-added':
      return void book.keys.set(event.key, { ...event, n, date })
    case 'key-retired':
      return void book.keys.set(event.key, {
        ...book.keys.get(event.key)!,
        retired: { ...event, n, date }
      })
  }
}

function addRevision(book: Book, revision: Revision): void {
  const { number, data } = revision
  book.certificates.set(numberKey(number), [...revisionsOf(book, number), revision])
  book.byData.set(data, revision)
}

function change(
  book: Book,
  { number, revision }: { readonly number: string; readonly revision: number },
  more: (revision: Revision) => Partial<Revision>
): void {
  const changed = revisionsOf(book, number).map(one =>
    one.revision === revision ? { ...one, ...more(one) } : one
  )
  book.certificates.set(numberKey(number), changed)
  for (const one of changed) book.byData.set(one.data, one)
}
