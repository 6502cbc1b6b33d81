/**
 * How even a sheet is, from thickness readings spread over it.
 *
 *     uniformity = 100 · (max − min) / mean
 *
 * Descriptions of the readings themselves, so plain numbers: they carry no uncertainty. They grow with
 * the number of readings, which belongs beside them.
 *
 * Source: the definitions of range and of standard deviation (n − 1).
 */

import { DomainError } from '../metrology/domain.ts'
import { standardDeviation } from '../metrology/readings.ts'

/** Extremes and scatter of readings, all in the readings' unit. */
export interface Spread {
  readonly min: number
  readonly max: number
  readonly range: number
  /** Of single readings; absent for fewer than two. */
  readonly standardDeviation?: number
}

/**
 * Extremes and scatter of readings of one kind.
 *
 * @throws RangeError without a reading
 */
export function spread(values: readonly number[]): Spread {
  if (values.length === 0) throw new RangeError('a spread requires at least 1 reading')
  const min = Math.min(...values)
  const max = Math.max(...values)
  const s = standardDeviation(values)
  return { min, max, range: max - min, ...(s === undefined ? {} : { standardDeviation: s }) }
}

/**
 * Range of the readings over their mean.
 *
 * @param values thickness readings, all in one unit
 * @returns range over mean, %
 * @throws RangeError without a reading; DomainError when a reading is not above 0
 */
export function uniformity_percent(values: readonly number[]): number {
  const { min, range } = spread(values)
  if (!(min > 0)) throw new DomainError('thickness_mm', 'greater than 0', min, 'check the readings')
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return (100 * range) / mean
}
