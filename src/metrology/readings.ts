/**
 * The mean of repeated readings, with their scatter as a type A cause.
 *
 * Each reading keeps a cause of its own, so quantities read together on one specimen stay
 * correlated through it. What is common to all readings (a calibration) is not divided by √n.
 *
 * Source: JCGM 100:2008, 4.2 and 5.2.3; H.2 for quantities read together.
 */

import type { BudgetLineParts, ReadOf } from './budget-line.ts'
import { type Cause, type Estimate, type Term, estimate } from './estimate.ts'

/** A method's own repeatability, found beforehand from many readings. */
export interface Repeatability {
  /** Standard deviation of one reading, in the readings' unit. */
  readonly s: number
  readonly df: number
  /** Where it comes from, for the budget: 'TM-01 repeatability'. */
  readonly name: string
  /** The same in parts. */
  readonly line?: BudgetLineParts
}

/** What was read: by its name in budgets, and in parts where other languages ask for it. */
export interface Named {
  readonly name: string
  readonly of?: ReadOf
}

/** A bare name has no parts. */
export const named = (read: string | Named): Named =>
  typeof read === 'string' ? { name: read } : read

/**
 * Mean of readings of one quantity on one thing.
 *
 * @param read what was read, for the budget: 'EB-26-041 expansion volume'
 * @param repeatability used in place of the readings' own scatter, which two or three readings
 *   estimate poorly (two alone make k = 12.7)
 * @throws RangeError without a reading
 */
export function meanOfReadings(
  readings: readonly Estimate[],
  read: string | Named,
  repeatability?: Repeatability
): Estimate {
  const value = meanValue(readings)
  const scatter = repeatability
    ? pooledScatter(readings.length, named(read).name, repeatability)
    : ownScatter(readings, value, named(read))
  return estimate(value, [...averagedTerms(readings), ...scatter])
}

/**
 * Mean of estimates, with no scatter of its own: what they share stays whole, what is each one's own
 * averages out.
 *
 * @throws RangeError without an estimate
 */
export const meanOf = (estimates: readonly Estimate[]): Estimate =>
  estimate(meanValue(estimates), averagedTerms(estimates))

/**
 * Mean of estimates' values alone.
 *
 * @throws RangeError without an estimate
 */
export function meanValue(estimates: readonly Estimate[]): number {
  if (estimates.length === 0) throw new RangeError('a mean requires at least 1 estimate')
  return estimates.reduce((sum, { value }) => sum + value, 0) / estimates.length
}

/** What each cause does to the mean through each of the estimates. */
const averagedTerms = (estimates: readonly Estimate[]): Term[] =>
  termsOf(estimates, u => u / estimates.length)

/**
 * Sum of estimates, each times a number known exactly.
 *
 * @param weights one an estimate, in their order
 */
export const weightedSum = (estimates: readonly Estimate[], weights: readonly number[]): Estimate =>
  estimate(
    estimates.reduce((sum, { value }, index) => sum + weights[index]! * value, 0),
    termsOf(estimates, (u, index) => u * weights[index]!)
  )

function termsOf(
  estimates: readonly Estimate[],
  effect: (u: number, index: number) => number
): Term[] {
  const terms: Term[] = []
  for (const [index, one] of estimates.entries())
    for (const { cause, u } of one.terms.values()) terms.push({ cause, u: effect(u, index) })
  return terms
}

/** Standard deviation of single readings, n − 1 in the divisor; undefined for fewer than two. */
export function standardDeviation(values: readonly number[]): number | undefined {
  if (values.length < 2) return undefined
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length
  // The second sum is zero in exact arithmetic and takes the mean's rounding error out.
  const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  const drift = values.reduce((sum, x) => sum + (x - mean), 0)
  return Math.sqrt((squares - (drift * drift) / values.length) / (values.length - 1))
}

const readingCause = (
  name: string,
  index: number,
  shared: Pick<Cause, 'pool' | 'df' | 'line'>
): Cause => ({ name: `${name}, reading ${index + 1}`, kind: 'A', ...shared })

/** Residual k over √(n(n − 1)): their squares add up to the variance of the mean. */
function ownScatter(readings: readonly Estimate[], mean: number, { name, of }: Named): Term[] {
  const n = readings.length
  if (n < 2) return []
  const shared = {
    pool: `${name}, scatter of ${n} readings`,
    df: n - 1,
    ...(of ? { line: { is: 'scatter' as const, of, n } } : {})
  }
  return readings.map((reading, index) => ({
    cause: readingCause(name, index, shared),
    u: (reading.value - mean) / Math.sqrt(n * (n - 1))
  }))
}

function pooledScatter(
  n: number,
  name: string,
  { s, df, name: pool, line }: Repeatability
): Term[] {
  return Array.from({ length: n }, (_, index) => ({
    cause: readingCause(name, index, { pool, df, ...(line ? { line } : {}) }),
    u: s / n
  }))
}
