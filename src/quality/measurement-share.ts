/**
 * How much of the scatter seen between lots is the measurement's own, and how much of the room
 * between the limits it fills.
 *
 * Sources: ISO 22514-7 (from memory, not checked against the print) for the two questions; the
 * variance of a measured figure is that of the lots and that of measuring them (JCGM 106:2012, 6).
 */

import { meanOfValues, sampleOf } from './sample.ts'

export interface MeasurementShare {
  /** Root mean square of the figures' standard uncertainties, in their unit. */
  readonly u: number
  /** Its part of the variance seen between lots, 0 to 1; 1 where the lots scatter less than that. */
  readonly ofScatter: number
  /** Standard deviation of the lots themselves, what measuring added taken out, in their unit. */
  readonly lotSigma: number
  /** Six u over the width between two limits; absent with one limit or none. */
  readonly ofTolerance?: number
}

/**
 * The measurement's part; absent where nothing scatters. What all figures share (one calibration) is
 * in u but moves all lots alike, so the share is an upper bound.
 *
 * @param figures value and standard uncertainty of each lot, in one unit; at least 2
 * @throws RangeError for fewer
 */
export function measurementShare(
  figures: readonly { readonly value: number; readonly u: number }[],
  width?: number
): MeasurementShare | undefined {
  const { s } = sampleOf(figures.map(({ value }) => value))
  if (s === 0) return undefined
  const variance = meanOfValues(figures.map(({ u }) => u * u))
  const u = Math.sqrt(variance)
  return {
    u,
    ofScatter: Math.min(1, variance / (s * s)),
    lotSigma: Math.sqrt(Math.max(0, s * s - variance)),
    ...(width === undefined ? {} : { ofTolerance: (6 * u) / width })
  }
}
