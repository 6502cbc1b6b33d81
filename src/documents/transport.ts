/** What is said of carriage: an adviser's recorded decision, else whom to ask. */

import type { Grade } from '../records/types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { unstopped } from './words.ts'

type Decision = NonNullable<NonNullable<Grade['hazards']>['transport']>

/**
 * Never that goods are free to travel for their composition alone: that is an adviser's to decide. A
 * decision is told by the adviser's function, with its basis and how long it is good; on any other day
 * it is none.
 */
export function transportText(
  decision: Decision | undefined,
  day: string,
  { hazards, own }: Tongue = english
): string {
  if (!decision || day < decision.on) return hazards.noTransport
  if (day > decision.until) return hazards.earlierTransport(decision.until)
  const said = (text: string) => unstopped(own(text))
  return hazards.transport(
    { ...decision, function: own(decision.function) },
    said(decision.decision),
    said(decision.basis)
  )
}
