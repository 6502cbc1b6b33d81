/**
 * Acid to be neutralised, and what a neutraliser can do about it.
 *
 *     acidEquivalents   n = Σ z · m / M          z acid hydrogens of each acid
 *     demand            m = n · M(base) / z(base)
 *     supplied          n = w · m · z(base) / M(base)
 *     excess            f = n supplied / n of the acid
 *
 * All acid charged counts, taken up by the graphite or not: the demand is an upper bound. Salts of
 * nitric acid add nothing to it, nor does an oxidiser: only what brings hydrogen ions does.
 *
 * Source: stoichiometry, bisulfate counted to the end; molar masses.
 */

import { DomainError, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

interface Substance {
  readonly formula: string
  /** Hydrogen ions that a formula unit gives, or takes up. */
  readonly z: number
}

/** Acids by the name they have in records. */
export const acids = {
  'sulfuric acid': { formula: 'H2SO4', z: 2 },
  'nitric acid': { formula: 'HNO3', z: 1 },
  'phosphoric acid': { formula: 'H3PO4', z: 3 },
  'acetic acid': { formula: 'CH3COOH', z: 1 }
} as const satisfies Record<string, Substance>
export type Acid = keyof typeof acids

/** Sulfuric acid a mol of hydrogen ion, g: free acidity counts as it, whatever it came from. */
export const ACID_G_PER_EQUIVALENT =
  molarMass_g_per_mol(acids['sulfuric acid'].formula) / acids['sulfuric acid'].z

/** Neutralisers by the name they have in records; `co2` is the gas a formula unit sets free. */
export const bases = {
  ammonia: { formula: 'NH3', z: 1, co2: 0, frees: false },
  'sodium hydrogen carbonate': { formula: 'NaHCO3', z: 1, co2: 1, frees: false },
  'sodium carbonate': { formula: 'Na2CO3', z: 2, co2: 1, frees: true },
  'sodium hydroxide': { formula: 'NaOH', z: 1, co2: 0, frees: true },
  'calcium hydroxide': { formula: 'Ca(OH)2', z: 2, co2: 0, frees: true },
  'calcium carbonate': { formula: 'CaCO3', z: 2, co2: 1, frees: false }
} as const satisfies Record<
  string,
  Substance & {
    readonly co2: number
    /** Strong enough to free ammonia from an ammonium salt. */
    readonly frees: boolean
  }
>
export type Base = keyof typeof bases

export const isAcid = (name: string): name is Acid => Object.hasOwn(acids, name)
export const isBase = (name: string): name is Base => Object.hasOwn(bases, name)

export const demandBasis = {
  formula: 'm = n(H⁺) · M(base) / z(base), n(H⁺) = Σ z · w · m / M, over the acids charged',
  source:
    'stoichiometry; all acid charged is counted, so that the demand is an upper bound; salts of nitric acid add nothing'
}

export const excessBasis = {
  formula: 'f = n(base) · z(base) / n(H⁺)',
  source: 'stoichiometry: neutraliser added over neutraliser needed'
}

/**
 * Amount of hydrogen ion in a mass of acid.
 *
 * @returns amount, mol
 * @throws DomainError when the mass is below 0
 */
export function acidEquivalents(acid: Acid, inputs: { acid_g: Estimate }): Computed<'acid_g'> {
  requireNotNegative(inputs, 'acid_g', 'check the mass and strength of the acid')
  const { formula, z } = acids[acid]
  return propagate(x => (z * x.acid_g) / molarMass_g_per_mol(formula), inputs)
}

export interface DemandInputs {
  /** Hydrogen ion to neutralise, mol. */
  equivalents_mol: Estimate
  /** Strength of the neutraliser as sold, %; ammonia as NH3. */
  strength_percent: Estimate
}

/**
 * Neutraliser needed.
 *
 * @returns mass as sold, g
 * @throws DomainError when the amount is below 0, or the strength is not above 0 and at most 100
 */
export function demand(base: Base, inputs: DemandInputs): Computed<keyof DemandInputs> {
  requireNotNegative(inputs, 'equivalents_mol', 'check the acids charged')
  requireStrength(inputs)
  return propagate(
    x => (x.equivalents_mol * gramsPerEquivalent(base)) / (x.strength_percent / 100),
    inputs
  )
}

export interface SuppliedInputs {
  /** Neutraliser as sold, g. */
  base_g: Estimate
  /** Its strength, %; ammonia as NH3. */
  strength_percent: Estimate
}

/**
 * Hydrogen ion that a mass of neutraliser can take up.
 *
 * @returns amount, mol
 * @throws DomainError when the mass is below 0, or the strength is not above 0 and at most 100
 */
export function supplied(base: Base, inputs: SuppliedInputs): Computed<keyof SuppliedInputs> {
  requireNotNegative(inputs, 'base_g', 'check the mass of the neutraliser')
  requireStrength(inputs)
  return propagate(x => (x.base_g * (x.strength_percent / 100)) / gramsPerEquivalent(base), inputs)
}

export interface ExcessInputs {
  /** Hydrogen ion that the neutralisers added can take up, mol. */
  supplied_mol: Estimate
  /** Hydrogen ion there is, mol. */
  equivalents_mol: Estimate
}

/**
 * Neutraliser added over neutraliser needed.
 *
 * @returns ratio; below 1 the charge stays acid
 * @throws DomainError when there is no acid, or the neutraliser is below 0
 */
export function excess(inputs: ExcessInputs): Computed<keyof ExcessInputs> {
  requirePositive(inputs, 'equivalents_mol', 'without acid there is nothing to neutralise')
  requireNotNegative(inputs, 'supplied_mol', 'check the neutraliser')
  return propagate(x => x.supplied_mol / x.equivalents_mol, inputs)
}

/**
 * Carbon dioxide set free by neutralising, all of it as gas.
 *
 * @returns mass, g; 0 where the base holds no carbonate
 * @throws DomainError when the amount neutralised is below 0
 */
export function carbonDioxide(
  base: Base,
  inputs: { neutralised_mol: Estimate }
): Computed<'neutralised_mol'> {
  requireNotNegative(inputs, 'neutralised_mol', 'check the acids and the neutraliser')
  const { co2, z } = bases[base]
  return propagate(x => (x.neutralised_mol * co2 * molarMass_g_per_mol('CO2')) / z, inputs)
}

const gramsPerEquivalent = (base: Base): number =>
  molarMass_g_per_mol(bases[base].formula) / bases[base].z

function requireStrength({ strength_percent: { value } }: { strength_percent: Estimate }): void {
  if (!(value > 0 && value <= 100))
    throw new DomainError('strength_percent', 'above 0 and at most 100', value, 'check the label')
}
