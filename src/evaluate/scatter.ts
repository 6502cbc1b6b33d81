/** Readings of one thing too far apart to be scatter: a digit or a unit went wrong in one. */

import type { Repeatability } from '../metrology/readings.ts'

/**
 * Factors of the critical range for 95 %, by the number of readings.
 *
 * Source: ISO 5725-6:1994, table 1 (from memory, not checked against the print).
 */
const CRITICAL = [0, 0, 2.8, 3.3, 3.6, 3.9, 4.0, 4.2, 4.3, 4.4, 4.5]

/** Room beyond the critical range, which one set in twenty exceeds by chance. */
const ROOM = 1.5

/** Without a known repeatability: a range beyond this part of the mean is a slip, not scatter. */
const WIDEST_PART = 0.5

/**
 * The same of places that differ by themselves, such as those of a char. One reading that is next to
 * nothing beside any number of equal ones is always beyond it.
 */
const WIDEST_OF_PLACES = 1

/** How far readings lie apart, and how far they may. */
export interface Scatter {
  readonly range: number
  readonly most: number
}

/**
 * The scatter of readings where it is more than can be; undefined where it is not.
 *
 * @param values readings of one thing, in one unit
 * @param uneven true where they are of places that differ by themselves
 */
export function excessiveScatter(
  values: readonly number[],
  repeatability: Repeatability | undefined,
  uneven = false
): Scatter | undefined {
  if (values.length < 2) return undefined
  const range = Math.max(...values) - Math.min(...values)
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const factor = CRITICAL[Math.min(values.length, CRITICAL.length - 1)]!
  const part = uneven ? WIDEST_OF_PLACES : WIDEST_PART
  const most = repeatability ? ROOM * factor * repeatability.s : part * Math.abs(mean)
  return range > most ? { range, most } : undefined
}
