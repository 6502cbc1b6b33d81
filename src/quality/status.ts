/** What state a lot is in on a day, from the decisions taken on it. */

/**
 * Words of ISO 9000:2015 (concession 3.12.5, release 3.12.7, scrap 3.12.10; numbers from memory, not
 * checked against the print), and the trade's quarantine.
 */
export type LotState =
  'quarantine' | 'released' | 'rejected' | 'concession' | 'withdrawn' | 'scrapped'

export interface StateDecision {
  readonly is: LotState
  /** YYYY-MM-DD. */
  readonly on: string
}

/** The last decision taken by a day; none means quarantine. Decisions stand in date order. */
export const decisionOn = <Decision extends StateDecision>(
  decisions: readonly Decision[],
  day: string
): Decision | undefined => decisions.findLast(decision => decision.on <= day)

/** States in which a lot may leave the workshop. */
export const isSellable = (state: LotState): boolean =>
  state === 'released' || state === 'concession'

/**
 * Whether a lot was let go by a day. What never was stays in the workshop; what once was is shown
 * for good, whatever was decided on it since: whoever holds some must be able to read that.
 */
export const wasLetGo = (decisions: readonly StateDecision[], day: string): boolean =>
  decisions.some(decision => decision.on <= day && isSellable(decision.is))

/** Why a decision cannot follow those before it; undefined where it can. */
export function refusedStep(
  earlier: readonly StateDecision[],
  decision: StateDecision
): string | undefined {
  const before = earlier.at(-1)
  if (before && decision.on < before.on)
    return `is dated ${decision.on}, before the decision above it of ${before.on}`
  const from = before?.is ?? 'quarantine'
  if (decision.is === 'withdrawn' && !wasLetGo(earlier, decision.on))
    return `cannot be withdrawn from ${from}: only what was let go can be called back`
  if (decision.is === 'released' && earlier.some(({ is }) => is === 'withdrawn'))
    return 'cannot be released again once withdrawn: rework it into a new lot'
  if (from === 'scrapped') return 'follows on scrapped: what is gone cannot be decided on'
  return undefined
}
