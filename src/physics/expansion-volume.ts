/**
 * Expansion volume of expandable graphite: what one gram of flake becomes when it is heated.
 *
 *     EV = V / m
 *
 * The divisor is the mass before expansion. Nothing is said of the worms' own mass, which is less.
 *
 * Source: GB 10698-89, definition of the expansion volume.
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

/** The model as a document shows it. */
export const expansionVolumeBasis = {
  formula: 'EV = V / m, m before expansion',
  source: 'GB 10698-89, definition of expansion volume'
} as const

export interface ExpansionVolumeInputs {
  /** Flake weighed in, g. */
  mass_g: Estimate
  /** Worms poured untapped and read cold, mL. */
  volume_mL: Estimate
}

/**
 * Expansion volume.
 *
 * @returns volume per mass before expansion, mL/g
 * @throws DomainError when the mass or the volume is not above 0
 */
export function expansionVolume(
  inputs: ExpansionVolumeInputs
): Computed<keyof ExpansionVolumeInputs> {
  requirePositive(inputs, 'mass_g', 'check the mass weighed in')
  requirePositive(inputs, 'volume_mL', 'check the reading of the cylinder')
  return propagate(x => x.volume_mL / x.mass_g, inputs)
}
