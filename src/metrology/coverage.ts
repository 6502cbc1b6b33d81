/**
 * Expanded uncertainty: an interval that holds the value with 95 % coverage probability.
 *
 * Source: JCGM 100:2008, G.3.2 (Student's t) and G.6.4 (degrees of freedom truncated).
 */

import tQuantile from '@stdlib/stats-base-dists-t-quantile'
import { type Estimate, degreesOfFreedom, uncertaintyOf } from './estimate.ts'

/** 97.5 % point of the normal distribution: k where the degrees of freedom are unlimited. */
const K_NORMAL = 1.959963984540054

/** Beyond this many degrees of freedom t differs from the normal by less than 3 in 10⁷. */
const MANY = 10_000_000

export interface Expanded {
  /** Half width of the interval, in the estimate's unit. */
  readonly U: number
  /** Coverage factor. */
  readonly k: number
  /** Effective degrees of freedom, truncated to an integer; Infinity where unlimited. */
  readonly df: number
}

/**
 * Coverage factor for 95 % and a number of degrees of freedom.
 *
 * @param df at least 1; anything between integers is truncated, never rounded up
 */
export function coverageFactor(df: number): number {
  const whole = Math.floor(df)
  return whole >= MANY ? K_NORMAL : tQuantile(0.975, Math.max(1, whole))
}

/** Expanded uncertainty of an estimate at 95 % coverage. */
export function expand(estimate: Estimate): Expanded {
  const df = degreesOfFreedom(estimate)
  const k = coverageFactor(df)
  return { U: k * uncertaintyOf(estimate), k, df: df >= MANY ? Infinity : Math.floor(df) }
}
