/** What a grade asks to be looked at of each lot of foil, and whether it was. */

import { aqls, inspectionLevels } from '../metrology/sampling-scheme.ts'
import type { VisualDemand } from '../records/schemas/visual.ts'
import type { VisualVerdict } from './visual.ts'

/** How a lot stands to what its grade asks: done and accepted, or what is wrong. */
export type DemandStanding = 'met' | 'not done' | 'too lenient' | 'not accepted'

/** A demand with how a lot stands to it. */
export interface StandingDemand {
  readonly demand: VisualDemand
  readonly standing: DemandStanding
}

/** How a lot that was looked at, or was not, stands to a demand. */
export function standingOf(demand: VisualDemand, found: VisualVerdict | undefined): DemandStanding {
  if (!found) return 'not done'
  if (isLenient(demand, found)) return 'too lenient'
  return found.isAccepted ? 'met' : 'not accepted'
}

/** A plan that asks for less than the grade does: a larger AQL, a lower level, a part for the whole. */
function isLenient({ aql, level }: AskedPlan, { plan }: VisualVerdict): boolean {
  if (!plan) return false
  if (aql === undefined) return true
  return (
    aqls.indexOf(plan.aql) > aqls.indexOf(aql) ||
    inspectionLevels.indexOf(plan.level) < inspectionLevels.indexOf(level ?? 'II')
  )
}

type AskedPlan = Pick<VisualDemand, 'aql' | 'level'>

/** 'level II, AQL 4.0 %', or 'the whole lot'. */
export const askedText = ({ aql, level }: AskedPlan): string =>
  aql === undefined ? 'the whole lot' : `level ${level ?? 'II'}, AQL ${aql} %`

/** Why a lot cannot be released; undefined where the demand is met, or refused by the look itself. */
export function demandRefusal(
  grade: string,
  demand: VisualDemand,
  found: VisualVerdict | undefined
): string | undefined {
  switch (standingOf(demand, found)) {
    case 'not done':
      return `grade ${grade} asks for a visual inspection (${askedText(demand)}), which was not done`
    case 'too lenient':
      return `grade ${grade} asks for a visual inspection of ${askedText(demand)}, and it was of ${askedText(found!.plan!)}`
    default:
      return undefined
  }
}
