/**
 * Where figures scatter: between lots, or within one. One-way analysis of variance with lots taken
 * as a random sample of what the process makes, lots of unequal numbers of readings allowed.
 *
 * Sources: NIST/SEMATECH e-Handbook, 7.4.3.3 (the table), 7.4.3.8 by memory for random effects;
 * S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992), 3.6, for n₀ (from memory,
 * not checked against the print).
 */

import fCdf from '@stdlib/stats-base-dists-f-cdf'
import { meanOfValues, sum } from './sample.ts'

/** One source of scatter in the table. */
export interface Scatter {
  readonly sumOfSquares: number
  readonly df: number
  readonly meanSquare: number
}

export interface LotVariance {
  readonly between: Scatter
  readonly within: Scatter
  readonly F: number
  /** Chance of so great an F where all lots have one mean. */
  readonly p: number
  /** Standard deviations of lots' means and of readings in a lot, in the figures' unit; the first is
   * 0 where lots differ less than their readings would let them. */
  readonly betweenSigma: number
  readonly withinSigma: number
  /** Part of the variance of a single reading that lies between lots, 0 to 1. */
  readonly betweenShare: number
}

/**
 * The table and the two scatters; absent where no lot has two readings, there are fewer than two
 * lots, or readings within a lot never differ.
 *
 * @param lots the readings of each lot, in one unit; lots without a reading count as absent
 */
export function lotVariance(lots: readonly (readonly number[])[]): LotVariance | undefined {
  const groups = lots.filter(({ length }) => length > 0)
  const readings = groups.flat()
  const [lotsDf, readingsDf] = [groups.length - 1, readings.length - groups.length]
  if (lotsDf < 1 || readingsDf < 1) return undefined
  const between = scatterOf(betweenSquares(groups, meanOfValues(readings)), lotsDf)
  const within = scatterOf(sum(groups.map(squaresAboutMean)), readingsDf)
  if (within.meanSquare === 0) return undefined
  const F = between.meanSquare / within.meanSquare
  const excess = Math.max(0, between.meanSquare - within.meanSquare)
  const variance = excess / readingsPerLot(groups)
  return {
    between,
    within,
    F,
    p: 1 - fCdf(F, lotsDf, readingsDf),
    betweenSigma: Math.sqrt(variance),
    withinSigma: Math.sqrt(within.meanSquare),
    betweenShare: variance / (variance + within.meanSquare)
  }
}

const scatterOf = (sumOfSquares: number, df: number): Scatter => ({
  sumOfSquares,
  df,
  meanSquare: sumOfSquares / df
})

const betweenSquares = (groups: readonly (readonly number[])[], mean: number) =>
  sum(groups.map(group => group.length * (meanOfValues(group) - mean) ** 2))

function squaresAboutMean(group: readonly number[]): number {
  const mean = meanOfValues(group)
  return sum(group.map(value => (value - mean) ** 2))
}

/** n₀, the number of readings a lot counts with: their mean, less what their inequality takes. */
function readingsPerLot(groups: readonly (readonly number[])[]): number {
  const sizes = groups.map(({ length }) => length)
  const all = sum(sizes)
  return (all - sum(sizes.map(size => size * size)) / all) / (groups.length - 1)
}
