/**
 * Expansion kept after a soak in water.
 *
 *     K = 100 · EV soaked / EV
 *
 * Both volumes are of the same lot by the same method; the soaked flake is dried before it is weighed.
 *
 * Source: definition of a part kept; no standard is known for it.
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const soakKeptBasis = {
  formula: 'K = EV after / EV before, after and before the soak',
  source: 'definition of a part kept; no standard is known for it'
} as const

export interface SoakInputs {
  /** Expansion volume after the soak, mL/g. */
  soaked_mL_per_g: Estimate
  /** Expansion volume of the lot, mL/g. */
  expansionVolume_mL_per_g: Estimate
}

/**
 * Expansion kept.
 *
 * @returns part of the expansion volume, %
 * @throws DomainError when either volume is not above 0
 */
export function soakKept(inputs: SoakInputs): Computed<keyof SoakInputs> {
  requirePositive(inputs, 'soaked_mL_per_g', 'check the readings after the soak')
  requirePositive(inputs, 'expansionVolume_mL_per_g', 'check the expansion volume of the lot')
  return propagate(x => (100 * x.soaked_mL_per_g) / x.expansionVolume_mL_per_g, inputs)
}
