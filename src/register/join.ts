/**
 * One log of two that parted: two computers each added lines to the same beginning. Ours stays as it
 * is; what only theirs has is entered after it, and given up where ours came first.
 */

import { canonicalText } from './canonical.ts'
import type { EventOf, LogLine, RegisterEvent } from './events.ts'
import type { Fault } from './fault.ts'
import { append, readLog } from './log.ts'
import { type Documents, flawOf } from './rules.ts'
import { type Book, emptyBook, enter, numberKey } from './standing.ts'

export interface Dropped {
  readonly event: RegisterEvent
  /** Why it has no place in the joined log. */
  readonly why: string
}

export interface Joined {
  readonly text: string
  /** Lines that both begin with. */
  readonly common: number
  /** Events entered after ours, in order, the voided ones among them. */
  readonly entered: readonly RegisterEvent[]
  /** Lots whose certificate was given up: issue them again, under new numbers. */
  readonly again: readonly string[]
  /** Events that were not entered and that someone must look at. */
  readonly dropped: readonly Dropped[]
}

export type JoinOutcome =
  | ({ readonly ok: true } & Joined)
  | {
      readonly ok: false
      readonly of: 'ours' | 'theirs' | 'both'
      readonly faults: readonly Fault[]
    }

const WHY_VOIDED = 'two computers drew the same number; the other certificate was entered first'

/** What joining has come to so far. */
interface Work {
  readonly book: Book
  /** Lines of ours. */
  readonly size: number
  /** What ours entered since the logs parted, in canonical text. */
  readonly ours: ReadonlySet<string>
  /** Numbers whose certificate of theirs was given up, from which revision on. */
  readonly lost: Map<string, number>
  readonly entered: RegisterEvent[]
  readonly again: Set<string>
  readonly dropped: Dropped[]
}

/**
 * Join two logs.
 *
 * @param date the day of joining, not before the last line of ours
 * @param documents frozen documents of both, so that signatures are checked
 * @returns the log that begins with ours, or the faults of either
 */
export async function join(
  ours: string,
  theirs: string,
  date: string,
  documents: Documents = new Map()
): Promise<JoinOutcome> {
  const [our, their] = [await readLog(ours, documents), await readLog(theirs, documents)]
  if (our.faults.length > 0) return { ok: false, of: 'ours', faults: our.faults }
  if (their.faults.length > 0) return { ok: false, of: 'theirs', faults: their.faults }
  const parted = their.lines.findIndex((line, index) => line !== our.lines[index])
  const common = parted < 0 ? their.lines.length : parted
  const work = startOf(our.entries, common)
  for (const { event } of their.entries.slice(common)) await take(work, event, documents, date)
  const { entered, again, dropped } = work
  const joined = await append(ours, entered, date, documents)
  if (!joined.ok) return { ok: false, of: 'both', faults: joined.faults }
  return { ok: true, text: joined.text, common, entered, again: [...again], dropped }
}

function startOf(entries: readonly LogLine[], common: number): Work {
  const book = emptyBook()
  for (const entry of entries) enter(book, entry)
  const ours = new Set(entries.slice(common).map(({ event }) => canonicalText(event)))
  const size = entries.length
  return { book, size, ours, lost: new Map(), entered: [], again: new Set(), dropped: [] }
}

/** Enter an event of theirs, give it up, or say why neither. */
async function take(work: Work, event: RegisterEvent, documents: Documents, date: string) {
  const drop = (why: string) => void work.dropped.push({ event, why })
  const isFrozen = event.is === 'issued' || event.is === 'amended'
  if (!isLost(work, event)) {
    // Both entered the very same: there is nothing to add.
    if (work.ours.has(canonicalText(event))) return
    const flaw = await flawOf(work.book, event, documents)
    if (!flaw) return put(work, event, date)
    if (!isFrozen) return drop(flaw[1])
    if (isSameDocument(work, event)) return drop('ours holds the same document, entered otherwise')
  }
  if (!isFrozen) return drop('it belongs to a certificate that was given up')
  lose(work, event)
  const voided = voidedOf(event)
  const refused = await flawOf(work.book, voided, documents)
  return refused ? drop(refused[1]) : put(work, voided, date)
}

/** Frozen twice from the same records: all that differs is the salt of the private part. */
function isSameDocument({ book }: Work, event: EventOf<'issued' | 'amended'>): boolean {
  const known = book.byData.get(event.data)
  return known?.number === event.number && known.revision === event.revision
}

function put({ book, size, entered }: Work, event: RegisterEvent, date: string): void {
  entered.push(event)
  // The chain is made when all is known; the rules ask for no hash.
  enter(book, { n: size + entered.length, previous: '', date, event })
}

const voidedOf = ({ number, revision, data }: EventOf<'issued' | 'amended'>): RegisterEvent => ({
  is: 'voided',
  number,
  revision,
  data,
  reason: WHY_VOIDED
})

function lose({ lost, again }: Work, { number, revision, lot }: EventOf<'issued' | 'amended'>) {
  const key = numberKey(number)
  lost.set(key, Math.min(lost.get(key) ?? revision, revision))
  again.add(lot)
}

/** Whether an event is about a revision of theirs that ours has no room for. */
const isLost = ({ lost }: Work, event: RegisterEvent): boolean =>
  event.is !== 'voided' &&
  'number' in event &&
  event.revision >= (lost.get(numberKey(event.number)) ?? Infinity)
