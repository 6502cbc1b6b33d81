/** One chain of copies of two, where two computers sent copies apart. */

import { appendCopies, lastCopy, readCopies } from './copies.ts'
import type { Sent } from './copy-events.ts'
import type { Outcome } from './fault.ts'

export interface JoinedCopies {
  readonly text: string
  /** Of theirs, entered in ours. */
  readonly entered: readonly Sent[]
  /** Of theirs, left out: ours has another copy of that name. */
  readonly dropped: readonly Sent[]
}

/**
 * Ours as it stands, then what theirs has beyond it.
 *
 * @param date the day it is entered
 */
export async function joinCopies(
  ours: string,
  theirs: string,
  date: string
): Promise<Outcome<JoinedCopies>> {
  const [own, other] = [await readCopies(ours), await readCopies(theirs)]
  const known = new Set(own.copies.map(({ data }) => data))
  const beyond = other.copies
    .filter(({ data }) => !known.has(data))
    .map(({ n: _n, date: _date, isReplaced: _isReplaced, ...sent }) => sent)
  const isTaken = (one: Sent) => (lastCopy(own.copies, one)?.copy ?? 0) >= one.copy
  const [entered, dropped] = [beyond.filter(one => !isTaken(one)), beyond.filter(isTaken)]
  if (entered.length === 0) return { ok: true, text: ours, entered, dropped }
  const longer = await appendCopies(ours, entered, date, other.secret ?? '')
  return longer.ok ? { ...longer, entered, dropped } : longer
}
