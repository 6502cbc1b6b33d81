/**
 * What water leaches out of a sample, from its concentration in the extract.
 *
 *     w = (c − c0) · V / m        c, c0 in mg/L, V in mL, m in g: w in mg/kg
 *
 * c0 is a blank carried through the same way. It is leachable substance only: total content, as
 * combustion finds it, is another quantity and a larger one.
 *
 * Source: the definition of a mass fraction; leaching of chloride as in ASTM F1277 (withdrawn).
 */

import { requireNotNegative, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const leachedBasis = {
  formula: 'w = (c − c blank) · V extract / m',
  source: 'definition of a mass fraction; leachable only, not total content'
} as const

export interface LeachedInputs {
  /** Sample leached, g. */
  mass_g: Estimate
  /** Water it was leached with, mL. */
  extract_mL: Estimate
  /** Concentration in the extract, mg/L. */
  concentration_mg_per_L: Estimate
  /** Concentration in the blank, mg/L; exactly 0 where none was carried through. */
  blank_mg_per_L: Estimate
}

/**
 * Leachable substance.
 *
 * @returns mass fraction, mg/kg; 0 or below where the extract held no more than the blank
 * @throws DomainError when mass or extract are not above 0, or a concentration is below 0
 */
export function leached(inputs: LeachedInputs): Computed<keyof LeachedInputs> {
  requirePositive(inputs, 'mass_g', 'check the mass of the sample')
  requirePositive(inputs, 'extract_mL', 'check the volume of the extract')
  requireNotNegative(inputs, 'concentration_mg_per_L', 'check the reading')
  requireNotNegative(inputs, 'blank_mg_per_L', 'check the blank')
  return propagate(
    x => ((x.concentration_mg_per_L - x.blank_mg_per_L) * x.extract_mL) / x.mass_g,
    inputs
  )
}
