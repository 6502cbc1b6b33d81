/**
 * How well a process fits between its limits: Cp and Cpk from the scatter of neighbours, Pp and Ppk
 * from the scatter of all, each with a confidence interval, without which the index of a few lots
 * says little.
 *
 * Sources: ISO 22514-2 (definitions, from memory, not checked against the print); NIST/SEMATECH
 * e-Handbook, 6.1.6 (definitions, the χ² interval of Cp, the normal interval of Cpk).
 */

import chisquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { individualsChart, rangeDegreesOfFreedom } from './individuals.ts'
import { sampleOf } from './sample.ts'

/** In the figures' unit, at least one of them. */
export interface Tolerance {
  readonly min?: number
  readonly max?: number
}

/** An index with the ends of its confidence interval. */
export interface Index {
  readonly value: number
  readonly lower: number
  readonly upper: number
}

export interface Indices {
  /** Width between the limits over six σ; absent with one limit. */
  readonly width?: Index
  /** Distance of the mean from the nearer limit over three σ; negative outside. */
  readonly nearest: Index
}

export interface Capability {
  readonly n: number
  readonly confidence: number
  /** Cp and Cpk: what the process could do if it held still, σ from moving ranges. */
  readonly within: Indices
  /** Pp and Ppk: what it did, s of all figures. */
  readonly overall: Indices
  /** Fewer figures than `FEW_FIGURES`: the indices are shown, and not to be relied on. */
  readonly isFew: boolean
}

/** Below this the interval of an index is wider than what it is asked to tell: common practice, as
 * the e-Handbook says of its normal interval (from memory). */
export const FEW_FIGURES = 50

/** What an index stands on: where the process lies, how it scatters, and how surely that is known. */
export interface ProcessState {
  readonly n: number
  readonly mean: number
  readonly sigma: number
  /** Degrees of freedom of sigma. */
  readonly df: number
}

/**
 * Capability and performance of figures against their limits; absent where nothing scatters.
 *
 * @param values at least 2, in the order they were made
 * @throws RangeError for fewer, or without a limit
 */
export function capability(
  values: readonly number[],
  tolerance: Tolerance,
  confidence = 0.95
): Capability | undefined {
  const { n, mean, s } = sampleOf(values)
  const { sigma, ranges } = individualsChart(values)
  if (s === 0 || sigma === 0) return undefined
  const df = rangeDegreesOfFreedom(ranges.length)
  return {
    n,
    confidence,
    within: indices({ n, mean, sigma, df }, tolerance, confidence),
    overall: indices({ n, mean, sigma: s, df: n - 1 }, tolerance, confidence),
    isFew: n < FEW_FIGURES
  }
}

/**
 * Both indices of a process whose scatter is known with `df` degrees of freedom.
 *
 * @throws RangeError without a limit
 */
export function indices(
  { n, mean, sigma, df }: ProcessState,
  { min, max }: Tolerance,
  confidence = 0.95
): Indices {
  const distances = [
    ...(min === undefined ? [] : [mean - min]),
    ...(max === undefined ? [] : [max - mean])
  ]
  if (distances.length === 0) throw new RangeError('capability requires a limit')
  const nearest = Math.min(...distances) / (3 * sigma)
  const z = normalQuantile((1 + confidence) / 2, 0, 1)
  const half = z * Math.sqrt(1 / (9 * n) + (nearest * nearest) / (2 * df))
  return {
    ...(min === undefined || max === undefined
      ? {}
      : { width: widthIndex((max - min) / (6 * sigma), df, confidence) }),
    nearest: { value: nearest, lower: nearest - half, upper: nearest + half }
  }
}

/** σ̂²·ν/σ² is χ² with ν degrees of freedom: exact for s, close for moving ranges. */
function widthIndex(value: number, df: number, confidence: number): Index {
  const scaled = (p: number) => value * Math.sqrt(chisquareQuantile(p, df) / df)
  return { value, lower: scaled((1 - confidence) / 2), upper: scaled((1 + confidence) / 2) }
}
