/**
 * Porosity of foil: the part of its volume that is not graphite.
 *
 *     P = 100 · (1 − ρ / ρc)
 *
 * Source: the definition of porosity; crystal densities of graphite from X-ray lattice constants.
 */

import { requireAtMost, requirePositive } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  measured,
  propagate,
  rectangular
} from '../metrology/estimate.ts'

export const porosityBasis = {
  formula: 'P = 100 · (1 − ρ / ρ crystal)',
  source:
    'definition of porosity; crystal density of graphite 2.26 g/cm³, published X-ray values 2.261 to 2.267 g/cm³'
} as const

/**
 * Density of the graphite crystal, 2.26 g/cm³ as handbooks round it.
 *
 * Lattice constants published for graphite give 2.261 to 2.267 g/cm³. The limits ±0.007 around the
 * rounded value hold them all, and none is likelier than another, so u = 0.007/√3 = 0.0040 g/cm³.
 */
export const crystalDensity_g_per_cm3: Estimate = measured(
  2.26,
  rectangular(0.007),
  'crystal density of graphite',
  Infinity,
  { is: 'known', what: 'crystal density of graphite' }
)

export interface PorosityInputs {
  /** Bulk density of the foil, g/cm³. */
  foilDensity_g_per_cm3: Estimate
}

/**
 * Porosity from the foil's density.
 *
 * @returns part of the volume that is not graphite, %
 * @throws DomainError when the density is not above 0, or above that of the crystal
 */
export function porosity({
  foilDensity_g_per_cm3
}: PorosityInputs): Computed<keyof PorosityInputs | 'crystalDensity_g_per_cm3'> {
  const inputs = { foilDensity_g_per_cm3, crystalDensity_g_per_cm3 }
  requirePositive(inputs, 'foilDensity_g_per_cm3', 'check mass and dimensions of the sheet')
  requireAtMost(
    inputs,
    'foilDensity_g_per_cm3',
    'crystalDensity_g_per_cm3',
    'no foil is denser than its crystals: check mass, dimensions and their units'
  )
  return propagate(x => 100 * (1 - x.foilDensity_g_per_cm3 / x.crystalDensity_g_per_cm3), inputs)
}
