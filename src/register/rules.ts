/** What may follow what in a log, whatever its text and chain are. */

import { bytesOf } from './bytes.ts'
import type { EventKind, EventOf, RegisterEvent } from './events.ts'
import type { Flaw } from './fault.ts'
import { checkSignature, keyId } from './keys.ts'
import { type Book, revisionOf, type Revision, revisionsOf, stateOf } from './standing.ts'

/** Frozen documents by their fingerprint, as far as they are at hand. */
export type Documents = ReadonlyMap<string, string>

/** The first thing that forbids an event here, as far as it can be said at once. */
type Rule<Kind extends EventKind> = (book: Book, event: EventOf<Kind>) => Flaw | undefined

const named = ({ number, revision }: { readonly number: string; readonly revision: number }) =>
  `${number} revision ${revision}`

const rules: { readonly [Kind in EventKind]: Rule<Kind> } = {
  issued(book, event) {
    const [taken] = revisionsOf(book, event.number)
    if (taken)
      return ['REGISTER_NUMBER_TAKEN', `number ${taken.number} is taken since line ${taken.n}`]
    return event.revision === 1
      ? sameData(book, event.data)
      : ['REGISTER_REVISION', `${named(event)} is issued first: a number starts with revision 1`]
  },

  amended(book, event) {
    const last = revisionsOf(book, event.number).at(-1)
    if (last?.number !== event.number) return notIssued(event)
    if (last.withdrawn)
      return [
        'REGISTER_WITHDRAWN',
        `${named(last)} was withdrawn on line ${last.withdrawn.n}: nothing amends it, issue under a new number`
      ]
    if (event.revision !== last.revision + 1)
      return [
        'REGISTER_REVISION',
        `${event.number} stands at revision ${last.revision}: the next is ${last.revision + 1}, not ${event.revision}`
      ]
    if (event.lot !== last.lot)
      return [
        'REGISTER_OTHER_LOT',
        `${event.number} is for lot ${last.lot}, not ${event.lot}: withdraw it and issue another`
      ]
    return sameData(book, event.data)
  },

  drawn(book, event) {
    const revision = revisionOf(book, event.number, event.revision)
    if (revision?.number !== event.number) return notIssued(event)
    return revision.drawn
      ? ['REGISTER_TWICE', `${named(event)} was drawn on line ${revision.drawn.n} already`]
      : notCurrent(book, revision, 'drawn')
  },

  withdrawn(book, event) {
    const revision = revisionOf(book, event.number, event.revision)
    if (revision?.number !== event.number) return notIssued(event)
    return notCurrent(book, revision, 'withdrawn')
  },

  voided(book, event) {
    const [kept] = revisionsOf(book, event.number)
    const given = book.voided.get(event.data)
    if (!kept) return notIssued(event)
    return given
      ? ['REGISTER_TWICE', `${named(given)} was given up on line ${given.n} already`]
      : sameData(book, event.data)
  },

  'key-added'(book, { key }) {
    const known = book.keys.get(key)
    return known && ['REGISTER_TWICE', `key ${key} was added on line ${known.n} already`]
  },

  'key-retired': (book, { key }) => usableKey(book, key),

  signed(book, event) {
    const revision = revisionOf(book, event.number, event.revision)
    if (revision?.number !== event.number) return notIssued(event)
    const before = revision.signatures.find(({ key }) => key === event.key)
    return before
      ? ['REGISTER_TWICE', `${named(event)} was signed with this key on line ${before.n} already`]
      : usableKey(book, event.key)
  }
}

const notIssued = (event: { readonly number: string; readonly revision: number }): Flaw => [
  'REGISTER_NOT_ISSUED',
  `${named(event)} was not issued before this line`
]

function notCurrent(book: Book, revision: Revision, act: string): Flaw | undefined {
  const state = stateOf(book, revision)
  if (state === 'current') return undefined
  return state === 'superseded'
    ? ['REGISTER_SUPERSEDED', `${named(revision)} is superseded and can no longer be ${act}`]
    : ['REGISTER_WITHDRAWN', `${named(revision)} is withdrawn and can no longer be ${act}`]
}

function sameData(book: Book, data: string): Flaw | undefined {
  const issued = book.byData.get(data)
  if (issued) return ['REGISTER_SAME_DATA', `this document is ${named(issued)}, line ${issued.n}`]
  const given = book.voided.get(data)
  return given && ['REGISTER_SAME_DATA', `this document was given up on line ${given.n}`]
}

function usableKey(book: Book, key: string): Flaw | undefined {
  const known = book.keys.get(key)
  if (!known) return ['REGISTER_UNKNOWN_KEY', `key ${key} was not added before this line`]
  return (
    known.retired && ['REGISTER_RETIRED_KEY', `key ${key} is retired since line ${known.retired.n}`]
  )
}

/** What forbids an event where the lines before it have made `book`. */
export async function flawOf(
  book: Book,
  event: RegisterEvent,
  documents: Documents
): Promise<Flaw | undefined> {
  const rule = rules[event.is] as Rule<EventKind>
  const flaw = rule(book, event)
  if (flaw) return flaw
  if (event.is === 'key-added') return wrongName(event)
  return event.is === 'signed' ? wrongSignature(book, event, documents) : undefined
}

async function wrongName({ key, publicKey }: EventOf<'key-added'>): Promise<Flaw | undefined> {
  const id = await keyId(publicKey)
  return id === key
    ? undefined
    : ['REGISTER_KEY_NAME', `the name of this public key is ${id}, not ${key}`]
}

/** A signature over a document at hand is checked; one over another cannot be. */
async function wrongSignature(
  book: Book,
  event: EventOf<'signed'>,
  documents: Documents
): Promise<Flaw | undefined> {
  const document = documents.get(revisionOf(book, event.number, event.revision)!.data)
  if (document === undefined) return undefined
  const { publicKey } = book.keys.get(event.key)!
  const checked = await checkSignature(publicKey, event.signature, bytesOf(document))
  return checked === 'bad'
    ? ['REGISTER_SIGNATURE', `the signature is not that of key ${event.key} over ${named(event)}`]
    : undefined
}
