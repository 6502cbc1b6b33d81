/** What is said of carriage: an adviser's recorded decision, else whom to ask. */

import type { Grade } from '../records/types.ts'
import { dateText } from './words.ts'

type Decision = NonNullable<NonNullable<Grade['hazards']>['transport']>

const NONE =
  'Transport: no classification has been determined by this document; ask a dangerous-goods safety adviser.'

/**
 * Never that goods are free to travel for their composition alone: that is an adviser's to decide. A
 * decision is told by the adviser's function, with its basis and how long it is good; on any other day
 * it is none.
 */
export function transportText(decision: Decision | undefined, day: string): string {
  if (!decision || day < decision.on) return NONE
  const { decision: what, basis, on, until } = decision
  if (day > until) return `${NONE} An earlier decision was valid until ${dateText(until)}.`
  const trimmed = (text: string) => text.replace(/\.$/u, '')
  return `Transport: ${trimmed(what)}. Decided by a ${decision.function} on ${dateText(on)}, valid until ${dateText(until)}, on this basis: ${trimmed(basis)}.`
}
