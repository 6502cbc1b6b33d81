/**
 * What a row of figures comes to: mean, scatter, and how far each hangs on the one before.
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.2, 1.3.5.6 and 1.3.5.12.
 */

import { standardDeviation } from '../metrology/readings.ts'

export interface Sample {
  readonly n: number
  readonly mean: number
  /** Standard deviation of one figure, n − 1 in the divisor, in the figures' unit. */
  readonly s: number
}

/**
 * Number, mean and standard deviation of figures of one unit.
 *
 * @throws RangeError with fewer than two, which have no scatter
 */
export function sampleOf(values: readonly number[]): Sample {
  const s = standardDeviation(values)
  if (s === undefined) throw new RangeError('a sample requires at least 2 figures')
  return { n: values.length, mean: meanOfValues(values), s }
}

/**
 * Mean of figures, good to 14 digits of the certified sets without a second pass.
 *
 * @throws RangeError without a figure
 */
export function meanOfValues(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('a mean requires at least 1 figure')
  return sum(values) / values.length
}

/**
 * Autocorrelation at lag 1, between −1 and 1; 0 where nothing scatters. Far from 0, a chart's limits
 * are too narrow (above) or too wide (below): neighbours say something of each other.
 *
 * Source: NIST/SEMATECH e-Handbook, 1.3.5.12.
 */
export function lagOneAutocorrelation(values: readonly number[]): number {
  const mean = meanOfValues(values)
  const deviations = values.map(value => value - mean)
  const squares = sum(deviations.map(deviation => deviation * deviation))
  const products = sum(
    deviations.slice(1).map((deviation, index) => deviation * deviations[index]!)
  )
  return squares === 0 ? 0 : products / squares
}

/** Sum of figures; 0 of none. */
export const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0)
