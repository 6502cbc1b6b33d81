/**
 * Between which values a stated part of a population lies, judged from a sample of it: as normal, or
 * without any assumption on its shape, from the sample's own order.
 *
 * The normal interval says nothing true of lots that were screened: where the same limit decided
 * which lots are in the sample, its tail is cut, and only the order of the figures may be used.
 *
 * Source: ISO 16269-6:2014, clauses on normal and on distribution-free intervals (from memory, not
 * checked against the print); NIST/SEMATECH e-Handbook, 7.2.6.3 and 7.2.6.4.
 */

import betaCdf from '@stdlib/stats-base-dists-beta-cdf'
import { crossing } from './root.ts'
import { sampleOf } from './sample.ts'
import {
  type Coverage,
  oneSidedFactor,
  requireProbabilities,
  twoSidedFactor
} from './tolerance-factor.ts'

/** Which ends are closed: both, or only the one a reader cares for. */
export type Sides = 'both' | 'lower' | 'upper'

export interface ToleranceQuestion extends Coverage {
  readonly sides: Sides
}

/** 95 % of the population with 95 % confidence, between two limits. */
export const usualQuestion: ToleranceQuestion = { coverage: 0.95, confidence: 0.95, sides: 'both' }

export interface ToleranceInterval extends ToleranceQuestion {
  readonly kind: 'normal' | 'distribution-free'
  readonly n: number
  /** In the figures' unit; absent where that end is open. */
  readonly lower?: number
  readonly upper?: number
  /** k of x̄ ± k·s; absent where the shape is left open. */
  readonly factor?: number
  /** The confidence really reached: that asked for, or more; less where n is too small for it. */
  readonly attained: number
  /** Part of the population it holds with the confidence asked for, at least. */
  readonly held: number
}

/**
 * Normal tolerance interval, x̄ ± k·s with the exact factor.
 *
 * @param values figures of one unit, at least 2
 * @throws RangeError for fewer figures or probabilities outside (0.5, 1)
 */
export function toleranceInterval(
  values: readonly number[],
  question: ToleranceQuestion = usualQuestion
): ToleranceInterval {
  const { n, mean, s } = sampleOf(values)
  const { sides, coverage: held, confidence: attained } = question
  const factor = sides === 'both' ? twoSidedFactor(n, question) : oneSidedFactor(n, question)
  return {
    ...question,
    kind: 'normal',
    n,
    factor,
    attained,
    held,
    ...ends(sides, mean - factor * s, mean + factor * s)
  }
}

/**
 * Interval between two of the sample's own figures, or the best it can do where n is too small: then
 * from the least to the greatest, with the confidence that reaches.
 *
 * @param values figures of one unit, at least 2
 * @throws RangeError for fewer figures or probabilities outside (0.5, 1)
 */
export function distributionFreeInterval(
  values: readonly number[],
  question: ToleranceQuestion = usualQuestion
): ToleranceInterval {
  const { n } = sampleOf(values)
  const sorted = [...values].sort((a, b) => a - b)
  const left = Math.max(fewest(question), mostLeftOut(n, question))
  // An odd one goes to the upper end, as good as the lower.
  const below = question.sides === 'both' ? Math.floor(left / 2) : left
  const above = question.sides === 'both' ? left - below : left
  return {
    ...question,
    kind: 'distribution-free',
    n,
    attained: freeConfidence(n, left, question.coverage),
    held: freeCoverage(n, left, question.confidence),
    ...ends(question.sides, sorted[below - 1]!, sorted[n - above]!)
  }
}

/**
 * Fewest figures whose least and greatest (or the one of them) make the interval.
 *
 * @throws RangeError for probabilities outside (0.5, 1)
 */
export function fewestFigures(question: ToleranceQuestion): number {
  requireProbabilities(question)
  let n = fewest(question)
  while (freeConfidence(n, fewest(question), question.coverage) < question.confidence) n++
  return n
}

/** Ranks that an interval cannot do without: both ends, or one. */
const fewest = ({ sides }: ToleranceQuestion) => (sides === 'both' ? 2 : 1)

/**
 * Probability that n figures less the `left` outermost ranks cover the part p: the coverage between
 * order statistics is Beta(n + 1 − left, left), whatever the population's shape.
 */
const freeConfidence = (n: number, left: number, coverage: number): number =>
  left > n ? 0 : 1 - betaCdf(coverage, n + 1 - left, left)

/** The part that they cover with a confidence. */
const freeCoverage = (n: number, left: number, confidence: number): number =>
  crossing(coverage => confidence - freeConfidence(n, left, Math.min(1, coverage)), 0.5)

/** The narrowest interval that still reaches the confidence, in ranks left at the ends; 0 if none. */
function mostLeftOut(n: number, question: ToleranceQuestion): number {
  requireProbabilities(question)
  let left = 0
  while (freeConfidence(n, left + 1, question.coverage) >= question.confidence) left++
  return left
}

const ends = (sides: Sides, lower: number, upper: number) => ({
  ...(sides === 'upper' ? {} : { lower }),
  ...(sides === 'lower' ? {} : { upper })
})
