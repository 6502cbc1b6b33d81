/**
 * Limits of a chart of individual figures and of their moving ranges, and of an exponentially
 * weighted moving average (EWMA) of them.
 *
 * σ is judged from the ranges of neighbours, so that a slow drift does not widen the limits that
 * should show it.
 *
 * Sources: ISO 7870-2 (individuals), ISO 7870-6 (EWMA), clauses from memory, not checked against the
 * print; NIST/SEMATECH e-Handbook, 6.3.2.2 and 6.3.2.4.
 */

import { meanOfValues } from './sample.ts'

/** Mean range of two normal figures over σ: 2/√π. Printed tables round it to 1.128. */
export const D2 = 2 / Math.sqrt(Math.PI)

/** Standard deviation of such a range over σ: √(2 − 4/π). */
const D3 = Math.sqrt(2 - 4 / Math.PI)

/** Centre and bounds of what a process in one state gives, in the figures' unit. */
export interface Limits {
  readonly centre: number
  readonly lower: number
  readonly upper: number
}

export interface IndividualsChart extends Limits {
  /** Mean moving range over d₂, in the figures' unit. */
  readonly sigma: number
  /** Ranges of neighbours, one fewer than figures. */
  readonly ranges: readonly number[]
  readonly rangeLimits: Limits
}

/**
 * Limits three σ from the mean, and those of the moving ranges.
 *
 * @param values at least 2, in the order they were made
 * @throws RangeError for fewer
 */
export function individualsChart(values: readonly number[]): IndividualsChart {
  const ranges = movingRanges(values)
  if (ranges.length === 0) throw new RangeError('a chart requires at least 2 figures')
  const centre = meanOfValues(values)
  const meanRange = meanOfValues(ranges)
  const sigma = meanRange / D2
  return {
    centre,
    lower: centre - 3 * sigma,
    upper: centre + 3 * sigma,
    sigma,
    ranges,
    rangeLimits: { centre: meanRange, lower: 0, upper: meanRange + 3 * D3 * sigma }
  }
}

/** Distance of each figure from the one before it. */
const movingRanges = (values: readonly number[]): number[] =>
  values.slice(1).map((value, index) => Math.abs(value - values[index]!))

/**
 * Degrees of freedom of σ from n moving ranges: those of a standard deviation with the same relative
 * variance. Neighbouring ranges share a figure, so they count for less than their number: about
 * 0.605 for each.
 *
 * Derived from Var(R̄), with E|UV| of two normal differences correlated by −½.
 */
export function rangeDegreesOfFreedom(ranges: number): number {
  const shared = (4 / Math.PI) * (Math.sqrt(3) / 2 + Math.PI / 12) - D2 * D2
  const variance = (ranges * D3 * D3 + 2 * (ranges - 1) * shared) / (ranges * ranges)
  return (D2 * D2) / (2 * variance)
}

/** How an EWMA forgets, and how far it may go: both of no unit. */
export interface EwmaDesign {
  /** Weight of the newest figure, above 0, at most 1. */
  readonly weight: number
  /** Half width of the limits in standard deviations of the average. */
  readonly width: number
}

/** λ = 0.2 and 2.86: one false alarm in about 370 lots, as often as three σ limits give one. */
export const usualEwma: EwmaDesign = { weight: 0.2, width: 2.86 }

/** One point of an EWMA with the limits it is held to: they widen to a steady state. */
export interface EwmaPoint extends Limits {
  readonly value: number
}

/**
 * The average after each figure: λ·x + (1 − λ)·the average before, begun at the centre.
 *
 * @param values in the order they were made
 * @param state where the process stands, and σ of one figure, in the figures' unit
 * @throws RangeError for a weight outside (0, 1]
 */
export function ewmaChart(
  values: readonly number[],
  { centre, sigma }: { readonly centre: number; readonly sigma: number },
  { weight, width }: EwmaDesign = usualEwma
): EwmaPoint[] {
  if (!(weight > 0 && weight <= 1)) throw new RangeError('the weight lies above 0, at most 1')
  let average = centre
  return values.map((value, index) => {
    average = weight * value + (1 - weight) * average
    const grown = 1 - (1 - weight) ** (2 * (index + 1))
    const half = width * sigma * Math.sqrt((weight / (2 - weight)) * grown)
    return { value: average, centre, lower: centre - half, upper: centre + half }
  })
}
