/**
 * Sulfur or sulfate weighed as barium sulfate.
 *
 *     w = 100 · f · (m(BaSO4) − m0) / m          f = M(S) / M(BaSO4) or M(SO4) / M(BaSO4)
 *     H2SO4 equivalent = w(S) · M(H2SO4) / M(S)
 *
 * The blank m0 is the precipitate of the reagents alone. Which sulfur is found depends on what was done
 * before: a fusion or combustion brings all of it into solution, a leach only what is free. The
 * equivalent is a way of speaking: not all sulfur of a product is sulfuric acid.
 *
 * Source: stoichiometry of Ba²⁺ + SO4²⁻ → BaSO4; weighing form as in QUAM and every textbook of
 * gravimetry (from memory, not checked against the print).
 */

import { requireNotNegative, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

const BARIUM_SULFATE = molarMass_g_per_mol('BaSO4')

/** Parts of the precipitate that are the species asked for. */
const fractions = {
  S: molarMass_g_per_mol('S') / BARIUM_SULFATE,
  SO4: molarMass_g_per_mol('SO4') / BARIUM_SULFATE
} as const

export const sulfurBasis = {
  formula: 'w(S) = M(S) / M(BaSO4) · ((m(BaSO4) − m blank) / m)',
  source: 'stoichiometry of Ba²⁺ + SO₄²⁻ → BaSO₄, all sulfur brought into solution'
} as const

export const freeSulfateBasis = {
  formula: 'w(SO4) = M(SO4) / M(BaSO4) · ((m(BaSO4) − m blank) / m)',
  source: 'stoichiometry of Ba²⁺ + SO₄²⁻ → BaSO₄, of what water leaches out'
} as const

export const acidEquivalentBasis = {
  formula: 'w(H2SO4) = w(S) · M(H2SO4) / M(S)',
  source: 'molar masses; a way of expressing sulfur, not a proof of acid'
} as const

export const explainedBasis = {
  formula: 'e = w(H2SO4) / (1 − w(moisture)) / L, L the ceiling of the loss on expansion',
  source:
    'mass balance: sulfuric acid taken up is part of all that was taken up; the rest is water and oxide'
}

export interface PrecipitateInputs {
  /** Sample, g. */
  mass_g: Estimate
  /** Ignited barium sulfate, g. */
  precipitate_g: Estimate
  /** The same of the reagents alone, g. */
  blank_g: Estimate
}

/**
 * Sulfur or sulfate of a sample.
 *
 * @returns mass fraction, %; 0 or below where the sample gave no more than the blank
 * @throws DomainError when the sample is not above 0, or a precipitate is below 0
 */
export function asBariumSulfate(
  inputs: PrecipitateInputs,
  species: keyof typeof fractions
): Computed<keyof PrecipitateInputs> {
  requirePositive(inputs, 'mass_g', 'check the mass of the sample')
  requireNotNegative(inputs, 'precipitate_g', 'check the crucible, empty and with the precipitate')
  requireNotNegative(inputs, 'blank_g', 'check the blank')
  return propagate(
    x => (100 * fractions[species] * (x.precipitate_g - x.blank_g)) / x.mass_g,
    inputs
  )
}

/**
 * Sulfur expressed as sulfuric acid.
 *
 * @returns mass fraction, %
 */
export const acidEquivalent = (inputs: { sulfur_percent: Estimate }): Computed<'sulfur_percent'> =>
  propagate(
    x => (x.sulfur_percent * molarMass_g_per_mol('H2SO4')) / molarMass_g_per_mol('S'),
    inputs
  )

export interface ExplainedInputs {
  /** Sulfur as sulfuric acid, of the product as received, %. */
  acidEquivalent_percent: Estimate
  /** Moisture of the product; exactly 0 where it is dry, %. */
  moisture_percent: Estimate
  /** What was taken up, as part of the dry product: the ceiling of the loss on expansion, %. */
  lossCeiling_percent: Estimate
}

/**
 * How much of what the graphite took up its sulfur explains.
 *
 * @returns sulfuric acid over everything taken up, %; above 100 % the two cannot both be right
 * @throws DomainError when nothing was taken up
 */
export function sulfurExplained(inputs: ExplainedInputs): Computed<keyof ExplainedInputs> {
  requirePositive(inputs, 'lossCeiling_percent', 'check the masses of the batch')
  return propagate(
    x => (100 * x.acidEquivalent_percent) / (1 - x.moisture_percent / 100) / x.lossCeiling_percent,
    inputs
  )
}
