/**
 * Expanded uncertainty: an interval that holds the value with 95 % coverage probability, or another.
 *
 * Source: JCGM 100:2008, G.3.2 (Student's t) and G.6.4 (degrees of freedom truncated).
 */

import tQuantile from '@stdlib/stats-base-dists-t-quantile'
import { type Estimate, degreesOfFreedom, uncertaintyOf } from './estimate.ts'

/** From here on the degrees of freedom count as unlimited: t differs from the normal's by 3 in 10⁷. */
const MANY = 10_000_000

/** Stands for unlimited degrees of freedom: t equals the normal's to the last digit of a float. */
const UNLIMITED = 1e15

export interface Expanded {
  /** Half width of the interval, in the estimate's unit. */
  readonly U: number
  /** Coverage factor. */
  readonly k: number
  /** Effective degrees of freedom, truncated to an integer; Infinity where unlimited. */
  readonly df: number
}

/**
 * Coverage factor for a number of degrees of freedom.
 *
 * @param df at least 1; anything between integers is truncated, never rounded up
 * @param probability that the interval holds the value, 0.95 unless stated; both tails are left out
 *   equally, so a one-sided 95 % is 0.90 here
 */
export function coverageFactor(df: number, probability = 0.95): number {
  const whole = Math.max(1, Math.min(truncate(df), UNLIMITED))
  const name = `${probability} ${whole}`
  const factor = factors.get(name) ?? tQuantile((1 + probability) / 2, whole)
  factors.set(name, factor)
  return factor
}

/** Factors found so far: each takes an iteration, and few are ever asked for. */
const factors = new Map<string, number>()

/** Expanded uncertainty of an estimate, at 95 % coverage unless another probability is stated. */
export function expand(estimate: Estimate, probability = 0.95): Expanded {
  const df = degreesOfFreedom(estimate)
  const k = coverageFactor(df, probability)
  return { U: k * uncertaintyOf(estimate), k, df: truncate(df) }
}

/** Next lower integer; 3.9999999999999996 is a 4 that floats missed, not a 3. */
function truncate(df: number): number {
  if (df >= MANY) return Infinity
  const whole = Math.floor(df)
  // Digits are written out, at some cost, only where the last of them could matter.
  return df - whole < NEARLY ? whole : Math.floor(Number(df.toPrecision(12)))
}

/** Above it, 12 digits of what is below MANY may round up to the next integer. */
const NEARLY = 0.999
