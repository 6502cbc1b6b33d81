/**
 * How far a film rose, and how far it could have.
 *
 *     ratio       R = h / t
 *     ceiling     h_max = EV · m″_EG / 1000
 *     efficiency  η = 100 · (h − t) / h_max
 *
 * The ceiling is the flake's own: all of it expanded as freely as in its test, upwards alone. Its volume
 * belongs to the temperature a coating sees, about 600 °C; the volume of a hotter furnace makes it too
 * high. The ratio falls with thickness and compares films of one thickness only.
 *
 * Source: definitions; volume over area is height.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const charRatioBasis = {
  formula: 'R = h / t, t of the dry film',
  source: 'definition of an expansion ratio'
}

export const charCeilingBasis = {
  formula: 'h_max = EV · m″_EG',
  source: 'volume over area is height; all flake expanded freely, upwards alone'
}

export const charEfficiencyBasis = {
  formula: 'η = (h − t) / h_max',
  source: 'definition: rise of the film over what its flake could raise it'
}

export interface CharInputs {
  /** Height of the char above the plate, mm. */
  charHeight_mm: Estimate
  /** Dry film thickness, mm. */
  dryFilm_mm: Estimate
}

/**
 * Char height over dry film thickness.
 *
 * @returns expansion ratio of the film
 * @throws DomainError when either is not above 0
 */
export function charRatio(inputs: CharInputs): Computed<keyof CharInputs> {
  requireChar(inputs)
  return propagate(x => x.charHeight_mm / x.dryFilm_mm, inputs)
}

export interface CeilingInputs {
  /** Expansion volume of the flake, mL/g. */
  expansionVolume_mL_per_g: Estimate
  /** Flake per area, g/m². */
  activeMass_g_per_m2: Estimate
}

/** mL/m² that stand 1 mm high, exact. */
const ML_PER_M2_AND_MM = 1000

/**
 * Height that the flake of a film could fill.
 *
 * @returns ceiling of the char height, mm
 * @throws DomainError when either is not above 0
 */
export function charCeiling(inputs: CeilingInputs): Computed<keyof CeilingInputs> {
  requirePositive(inputs, 'expansionVolume_mL_per_g', 'check the expansion volume of the flake')
  requirePositive(inputs, 'activeMass_g_per_m2', 'check film mass and loading')
  return propagate(
    x => (x.expansionVolume_mL_per_g * x.activeMass_g_per_m2) / ML_PER_M2_AND_MM,
    inputs
  )
}

export interface EfficiencyInputs extends CharInputs {
  /** Ceiling of the char height, mm. */
  charCeiling_mm: Estimate
}

/**
 * Rise of a film over its ceiling.
 *
 * @returns efficiency, %
 * @throws DomainError when a height is not above 0, or the char lower than the film was
 */
export function charEfficiency(inputs: EfficiencyInputs): Computed<keyof EfficiencyInputs> {
  requireChar(inputs)
  requirePositive(inputs, 'charCeiling_mm', 'check loading and expansion volume')
  const { charHeight_mm, dryFilm_mm } = inputs
  if (!(charHeight_mm.value > dryFilm_mm.value))
    throw new DomainError(
      'charHeight_mm',
      `greater than the dry film (${Number(dryFilm_mm.value.toPrecision(6))})`,
      charHeight_mm.value,
      'a film that did not rise has no efficiency: take the char height out, or check both'
    )
  return propagate(x => (100 * (x.charHeight_mm - x.dryFilm_mm)) / x.charCeiling_mm, inputs)
}

function requireChar({ charHeight_mm, dryFilm_mm }: CharInputs): void {
  const inputs = { charHeight_mm, dryFilm_mm }
  requirePositive(inputs, 'charHeight_mm', 'check the readings of the char')
  requirePositive(inputs, 'dryFilm_mm', 'check the readings of the film')
}
