/**
 * Free acidity: acid that leaches out of a sample and is titrated with an alkali of known strength.
 *
 *     freeAcidAmount   b(H⁺)    = (V − V0) · c · (Ve / Va) / m
 *     freeAcid         w(H2SO4) = 100 · b(H⁺) · (M / 2) / 1000
 *
 * Ve / Va is extract over aliquot, left out where the whole extract is titrated. The blank V0 is
 * titrated like the sample, on the same aliquot. The result is expressed as sulfuric acid whatever acid
 * it was. Where the sample holds none, the net titre scatters around 0 and may be negative.
 *
 * Source: stoichiometry of H2SO4 + 2 NaOH → Na2SO4 + 2 H2O.
 */

import { requireAtMost, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

export const freeAcidBasis = {
  formula: 'w = (V − V0) · c · (M(H2SO4) / 2) · (V extract / V aliquot) / m',
  source: 'stoichiometry of H2SO4 + 2 NaOH → Na2SO4 + 2 H2O'
} as const

/** Sulfuric acid gives two H⁺. */
const H_PER_ACID = 2

const MG_PER_G = 1000

/** % of sulfuric acid by mass that 1 mmol of H⁺ in a gram stands for. */
const PERCENT_PER_MMOL_PER_G = ((100 / MG_PER_G) * molarMass_g_per_mol('H2SO4')) / H_PER_ACID

/** Titration of the whole extract. */
export interface WholeExtractInputs {
  /** Titrant delivered to the end point, mL. */
  titre_mL: Estimate
  /** Titrant a blank takes to the same end point, mL. */
  blank_mL: Estimate
  /** Concentration of the alkali, mol/L, one OH⁻ a formula unit. */
  titrant_mol_per_L: Estimate
  /** Sample leached, g. */
  mass_g: Estimate
}

/** Titration of a part of the extract. */
export interface AliquotInputs extends WholeExtractInputs {
  /** Extract the sample was leached into, mL. */
  extract_mL: Estimate
  /** Part of it that was titrated, mL. */
  aliquot_mL: Estimate
}

/**
 * Leachable hydrogen ion.
 *
 * @returns amount per mass of sample, mmol/g; 0 or below where the sample took no more than the blank
 * @throws DomainError when the titrant's concentration, the mass or a volume of extract is not above 0,
 *   or the aliquot exceeds the extract
 */
export function freeAcidAmount(inputs: WholeExtractInputs | AliquotInputs): Computed {
  return titrate(inputs, 1)
}

/**
 * Leachable acid as sulfuric acid.
 *
 * @returns mass fraction, %; 0 or below where the sample took no more than the blank
 * @throws DomainError as freeAcidAmount does
 */
export function freeAcid(inputs: WholeExtractInputs | AliquotInputs): Computed {
  return titrate(inputs, PERCENT_PER_MMOL_PER_G)
}

/**
 * Leachable hydrogen ion, from the free acidity as sulfuric acid.
 *
 * @returns amount per mass of sample, mmol/g
 */
export const acidAmount = (inputs: { freeAcid_percent: Estimate }): Computed<'freeAcid_percent'> =>
  propagate(x => x.freeAcid_percent / PERCENT_PER_MMOL_PER_G, inputs)

export const acidAmountBasis = {
  formula: 'b = 2 · w / M(H2SO4)',
  source: 'stoichiometry of H2SO4: two H⁺ a molecule'
} as const

function titrate(inputs: WholeExtractInputs | AliquotInputs, scale: number): Computed {
  const { titre_mL, blank_mL, titrant_mol_per_L, mass_g } = inputs
  const whole = { titre_mL, blank_mL, titrant_mol_per_L, mass_g }
  requirePositive(whole, 'titrant_mol_per_L', 'check the concentration of the titrant')
  requirePositive(whole, 'mass_g', 'check the mass of the sample')
  const amount = (x: Record<keyof WholeExtractInputs, number>): number =>
    (scale * (x.titre_mL - x.blank_mL) * x.titrant_mol_per_L) / x.mass_g
  if (!('aliquot_mL' in inputs)) return propagate(amount, whole)

  const part = { ...whole, extract_mL: inputs.extract_mL, aliquot_mL: inputs.aliquot_mL }
  requirePositive(part, 'extract_mL', 'check the volume of the extract')
  requirePositive(part, 'aliquot_mL', 'check the volume titrated')
  requireAtMost(part, 'aliquot_mL', 'extract_mL', 'an aliquot is a part of the extract')
  return propagate(x => (amount(x) * x.extract_mL) / x.aliquot_mL, part)
}
