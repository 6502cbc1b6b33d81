/**
 * Density and areal mass of a rectangular sheet of foil.
 *
 *     foilDensity   ρ  = 1000 · m / (l · w · t)
 *     arealMass     m″ = 10⁶ · m / (l · w)
 *
 * Below about 1 mm the thickness decides how well the density is known; the areal mass does not need it.
 *
 * Source: the definitions of density and of mass per area, as ASTM F1315 applies them to cut pieces.
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const foilDensityBasis = {
  formula: 'ρ = m / (l · w · t)',
  source: 'definition of bulk density, by mass and dimensions as in ASTM F1315'
} as const

export const arealMassBasis = {
  formula: 'm″ = m / (l · w)',
  source: 'definition of mass per area'
} as const

/** Converts mm³ to cm³, exact. */
const MM3_PER_CM3 = 1000

/** Converts mm² to m², exact. */
const MM2_PER_M2 = 1_000_000

export interface SheetInputs {
  /** Mass of the sheet, g. */
  mass_g: Estimate
  /** Length, mm. */
  length_mm: Estimate
  /** Width, mm. */
  width_mm: Estimate
}

export interface FoilDensityInputs extends SheetInputs {
  /** Mean thickness over the sheet, mm. */
  thickness_mm: Estimate
}

/**
 * Bulk density of a sheet.
 *
 * @returns density, g/cm³
 * @throws DomainError when the mass or a dimension is not above 0
 */
export function foilDensity(inputs: FoilDensityInputs): Computed<keyof FoilDensityInputs> {
  requireSheet(inputs)
  requirePositive(inputs, 'thickness_mm', 'check the thickness readings')
  return propagate(
    x => (MM3_PER_CM3 * x.mass_g) / (x.length_mm * x.width_mm * x.thickness_mm),
    inputs
  )
}

/**
 * Mass of a sheet per area.
 *
 * @returns areal mass, g/m²
 * @throws DomainError when the mass or a dimension is not above 0
 */
export function arealMass(inputs: SheetInputs): Computed<keyof SheetInputs> {
  requireSheet(inputs)
  return propagate(x => (MM2_PER_M2 * x.mass_g) / (x.length_mm * x.width_mm), {
    mass_g: inputs.mass_g,
    length_mm: inputs.length_mm,
    width_mm: inputs.width_mm
  })
}

function requireSheet({ mass_g, length_mm, width_mm }: SheetInputs): void {
  const inputs = { mass_g, length_mm, width_mm }
  requirePositive(inputs, 'mass_g', 'check the mass of the sheet')
  requirePositive(inputs, 'length_mm', 'check the length of the sheet')
  requirePositive(inputs, 'width_mm', 'check the width of the sheet')
}
