/**
 * Bulk density of flake, loose or tapped.
 *
 *     ρ = m / V
 *
 * Whether the flake was poured or tapped is no detail: the two differ by a fifth or more, so they are
 * two quantities.
 *
 * Source: the definition of apparent density, as ISO 3923-1 (loose) and ISO 3953 (tapped) apply it to
 * powders (from memory, not checked against the print).
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const looseDensityBasis = {
  formula: 'ρ = m / V, poured',
  source:
    'definition of apparent density, as in ISO 3923-1 (from memory, not checked against the print)'
} as const

export const tappedDensityBasis = {
  formula: 'ρ = m / V, tapped',
  source:
    'definition of apparent density, as in ISO 3953 (from memory, not checked against the print)'
} as const

export interface BulkDensityInputs {
  /** Flake in the vessel, g. */
  mass_g: Estimate
  /** Volume it fills there, mL. */
  volume_mL: Estimate
}

/**
 * Bulk density.
 *
 * @returns mass per volume, g/mL
 * @throws DomainError when the mass or the volume is not above 0
 */
export function bulkDensity(inputs: BulkDensityInputs): Computed<keyof BulkDensityInputs> {
  requirePositive(inputs, 'mass_g', 'check the mass of the flake')
  requirePositive(inputs, 'volume_mL', 'check the volume it filled')
  return propagate(x => x.mass_g / x.volume_mL, inputs)
}
