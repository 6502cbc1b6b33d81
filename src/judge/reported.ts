/** Figures measured elsewhere against a limit: judged as reported, where the report lets them be. */

import type { Result } from '../evaluate/types.ts'
import { uncertaintyOf } from '../metrology/estimate.ts'
import { type Bounds, type DecisionRule, judge, type Verdict } from '../quality/judge.ts'
import type { Scope } from './types.ts'

/**
 * The verdict on a reported figure; undefined for a figure of our own.
 *
 * A report gives one figure for the lot: it decides no limit that every sheet or reading has to meet.
 * Without an uncertainty the guarded rule cannot be applied, and is never quietly replaced by another.
 */
export function judgeReported(
  { report, estimate, below }: Result,
  bounds: Bounds,
  scope: Scope,
  rule: DecisionRule
): Verdict | undefined {
  if (!report) return undefined
  const undecided: Verdict = { word: 'not decidable', undecidableMethod: false }
  if (scope !== 'lot mean') return undecided
  const { expandedUncertainty } = report
  if (expandedUncertainty === undefined && below === undefined && rule === 'guarded')
    return undecided
  const { word, probability, margin, undecidableMethod } = judge(
    {
      value: Number(report.value),
      standardUncertainty: uncertaintyOf(estimate),
      expandedUncertainty: Number(expandedUncertainty ?? 0),
      ...(below === undefined ? {} : { below })
    },
    bounds,
    rule
  )
  return {
    word,
    undecidableMethod,
    ...(margin === undefined ? {} : { margin }),
    ...(probability === undefined || expandedUncertainty === undefined ? {} : { probability })
  }
}
