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

/** States customers may see: what was never let go stays in the workshop. */
export const isPublishable = (decisions: readonly StateDecision[], day: string): boolean => {
  const state = decisionOn(decisions, day)?.is ?? 'quarantine'
  const wasSold = decisions.some(decision => decision.on <= day && isSellable(decision.is))
  return isSellable(state) || (state === 'withdrawn' && wasSold)
}

/** Why a decision cannot follow the one before it; undefined where it can. */
export function refusedStep(
  before: StateDecision | undefined,
  decision: StateDecision
): string | undefined {
  if (before && decision.on < before.on)
    return `is dated ${decision.on}, before the decision above it of ${before.on}`
  const from = before?.is ?? 'quarantine'
  if (decision.is === 'withdrawn' && !isSellable(from))
    return `cannot be withdrawn from ${from}: only what was let go can be called back`
  if (from === 'withdrawn' && decision.is === 'released')
    return 'cannot be released again once withdrawn: rework it into a new lot'
  if (from === 'scrapped') return 'follows on scrapped: what is gone cannot be decided on'
  return undefined
}
