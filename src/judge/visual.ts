/** Foil that was looked at: accepted by its sampling plan or not, and how much that says. */

import { type Problem, problemAt } from '../problem.ts'
import { acceptanceOfLot, acceptanceOfProcess, qualityAccepted } from '../quality/acceptance.ts'
import { type SamplingPlan, samplingPlan } from '../quality/sampling-plan.ts'
import type { VisualRecord } from '../records/schemas/visual.ts'
import type { Entry, Foil } from '../records/types.ts'

/** A plan as it was applied. */
export interface AppliedPlan extends SamplingPlan {
  readonly level: NonNullable<VisualRecord['level']>
  readonly aql: NonNullable<VisualRecord['aql']>
  /** Probability that it accepts what a process of that AQL yields. */
  readonly acceptedAtAql: number
  /** Fraction nonconforming that it accepts one time in ten. */
  readonly acceptedOnceInTen: number
  /** How often it accepts this lot, by the nonconforming units in it. */
  readonly odds: readonly { readonly nonconforming: number; readonly accepted: number }[]
}

/** What looking at a lot came to. */
export interface VisualVerdict {
  readonly unit: VisualRecord['unit']
  readonly tested: string
  readonly lotSize: number
  readonly inspected: number
  readonly nonconforming: number
  readonly takenOut: number
  readonly defects: NonNullable<VisualRecord['defects']>
  /** Absent where the whole lot was looked at. */
  readonly plan?: AppliedPlan
  readonly isAccepted: boolean
}

/** Judge what was seen; undefined where nothing is recorded. */
export function judgeVisual({ visual }: Foil): VisualVerdict | undefined {
  if (!visual) return undefined
  const { unit, tested, lotSize, inspected, nonconforming, takenOut = 0, defects = [] } = visual
  const plan = planOf(visual)
  return {
    unit,
    tested,
    lotSize,
    inspected,
    nonconforming,
    takenOut,
    defects,
    ...(plan ? { plan } : {}),
    // Of a lot seen whole nothing is left to chance: what does not conform is taken out.
    isAccepted: plan ? nonconforming <= plan.acceptance : nonconforming === takenOut
  }
}

function planOf({ lotSize, inspected, level = 'II', aql }: VisualRecord): AppliedPlan | undefined {
  if (inspected === lotSize || !aql) return undefined
  const plan = samplingPlan(lotSize, level, aql)
  const { sampleSize, acceptance } = plan
  return {
    ...plan,
    level,
    aql,
    acceptedAtAql: acceptanceOfProcess(Number(aql) / 100, sampleSize, acceptance),
    acceptedOnceInTen: qualityAccepted(0.1, sampleSize, acceptance),
    odds: shares(lotSize).map(bad => ({
      nonconforming: bad,
      accepted: acceptanceOfLot(lotSize, bad, sampleSize, acceptance)
    }))
  }
}

/** Parts of a lot that its odds are told for, %. */
const PARTS = [1, 2.5, 5, 10, 20, 30, 50]

/** Numbers of units near those parts, each once, none of them 0. */
const shares = (lotSize: number): number[] => [
  ...new Set(PARTS.map(part => Math.max(1, Math.round((lotSize * part) / 100))))
]

/** What speaks against how a lot was looked at. */
export const checkVisual = (entry: Entry<Foil>): Problem[] => [
  ...checkDay(entry),
  ...checkSample(entry)
]

function checkDay({ record, at }: Entry<Foil>): Problem[] {
  const { visual, made } = record
  return visual && visual.tested < made
    ? [
        problemAt(
          at(['visual', 'tested']),
          'DATE_ORDER',
          `was looked at on ${visual.tested}, before the lot was made on ${made}`,
          'check the two dates'
        )
      ]
    : []
}

/** A sample of another size than the plan's: its acceptance number says nothing of it. */
function checkSample(entry: Entry<Foil>): Problem[] {
  const { visual } = entry.record
  const plan = visual && planOf(visual)
  if (!plan || visual.inspected === plan.sampleSize) return []
  const { lotSize, inspected } = visual
  return [
    problemAt(
      entry.at(['visual', 'inspected']),
      'INVALID_VALUE',
      `is ${inspected}, where level ${plan.level} and an AQL of ${plan.aql} % ask for ${plan.sampleSize} of ${lotSize}${plan.letter === plan.takenFrom ? '' : ` (letter ${plan.letter}, taken to ${plan.takenFrom})`}`,
      plan.isWhole
        ? 'look at the whole lot'
        : 'look at as many as the plan asks for, or at the whole lot'
    )
  ]
}

/** Why it keeps the lot from release; undefined where it does not. */
export function visualRefusal(foil: Foil): string | undefined {
  const found = judgeVisual(foil)
  if (!found || found.isAccepted) return undefined
  const { nonconforming, inspected, takenOut, plan } = found
  return plan
    ? `${nonconforming} of ${inspected} units looked at do not conform, and the plan accepts ${plan.acceptance}`
    : `${nonconforming - takenOut} units that do not conform were left in the lot`
}
