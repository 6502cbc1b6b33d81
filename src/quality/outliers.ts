/**
 * Figures that lie further out than a normal sample would let them. A flag is a question to the
 * workshop, never a reason to leave a figure out: nothing here returns a shortened sample.
 *
 * Sources: F. E. Grubbs, Technometrics 11 (1969) 1–21; B. Rosner, Technometrics 25 (1983) 165–172;
 * NIST/SEMATECH e-Handbook, 1.3.5.17.1 and 1.3.5.17.3.
 */

import tQuantile from '@stdlib/stats-base-dists-t-quantile'
import { sampleOf } from './sample.ts'

/** The figure furthest from the mean, and how far it may lie. */
export interface Extreme {
  /** Its position among the figures, from 0. */
  readonly index: number
  /** Distance from the mean in standard deviations. */
  readonly distance: number
  readonly critical: number
  readonly isOutlier: boolean
}

/** Fewest figures of which one can lie apart. */
const FEWEST = 3

/**
 * Grubbs' test of the one figure furthest out, on either side; absent where nothing scatters.
 *
 * @param significance chance of flagging a figure of a normal sample, 0.05 unless stated
 * @throws RangeError for fewer than 3 figures
 */
export function grubbs(values: readonly number[], significance = 0.05): Extreme | undefined {
  if (values.length < FEWEST) throw new RangeError("Grubbs' test requires at least 3 figures")
  return extremeOf(
    values,
    values.map((_, index) => index),
    significance
  )
}

/**
 * Critical distance for the furthest of n figures on either side.
 *
 * @param n at least 3
 */
export function grubbsCritical(n: number, significance = 0.05): number {
  const t = tQuantile(1 - significance / (2 * n), n - 2)
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t))
}

/** Fewest figures for the generalised test, whose critical values are approximate below. */
export const FEWEST_FOR_MANY = 25

/**
 * Rosner's generalised test: up to `most` outliers, none hiding another. All steps are returned,
 * furthest first; the outliers are those up to the last step that exceeds its critical value.
 *
 * @param most outliers looked for, at least 1
 * @throws RangeError where fewer than 3 figures would be left at the last step
 */
export function generalisedExtremes(
  values: readonly number[],
  most: number,
  significance = 0.05
): Extreme[] {
  if (values.length - most + 1 < FEWEST)
    throw new RangeError('the generalised test requires at least 3 figures at its last step')
  const left = values.map((_, index) => index)
  const steps: Extreme[] = []
  while (steps.length < most) {
    const step = extremeOf(values, left, significance)
    if (!step) break
    steps.push(step)
    left.splice(left.indexOf(step.index), 1)
  }
  const last = steps.findLastIndex(({ isOutlier }) => isOutlier)
  return steps.map((step, position) => ({ ...step, isOutlier: position <= last }))
}

/** The furthest of those figures that are at `indices`. */
function extremeOf(
  values: readonly number[],
  indices: readonly number[],
  significance: number
): Extreme | undefined {
  const { n, mean, s } = sampleOf(indices.map(index => values[index]!))
  if (s === 0) return undefined
  const far = (index: number) => Math.abs(values[index]! - mean)
  const index = indices.reduce((furthest, one) => (far(one) > far(furthest) ? one : furthest))
  const distance = far(index) / s
  const critical = grubbsCritical(n, significance)
  return { index, distance, critical, isOutlier: distance > critical }
}
