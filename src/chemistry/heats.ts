/**
 * Heat of diluting and of neutralising sulfuric acid.
 *
 *     dilution        H = n · (Q(r1) − Q(r0))                     r water per acid, both in mol
 *     neutralisation  H = n · (Q(∞) − Q(r)) − Σ n(eq) · ΔH(base)
 *     adiabatic rise  ΔT = H / (m · cp)
 *
 * Q is the integral heat of solution at 25 °C. Two evaluations of it differ by up to 3.4 kJ/mol; the
 * larger heat counts, and ±5 % is taken as its limit. Carbon dioxide is taken to stay dissolved, for
 * leaving cools. No heat is taken to escape. The heat of the reaction itself, of acid and oxidiser with
 * graphite, is not in any of these figures, and nothing here says that a charge is safe.
 *
 * Sources: heats of solution and heat capacities in heat-of-solution.ts; enthalpies of reaction from the
 * NBS Tables of 1982 (from memory, not checked against the print).
 */

import { DomainError, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  measured,
  propagate,
  rectangular
} from '../metrology/estimate.ts'
import { capacityAt, largerHeat } from './heat-of-solution.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'
import type { Base } from './neutralisation.ts'

export const dilutionHeatBasis = {
  formula: 'H = n(H2SO4) · (Q(r1) − Q(r0)), r mol of water a mol of acid, before and after',
  source:
    'the larger of NBS Circular 500 (from memory, not checked against the print) and Zeleznik 1991, ± 5 %; the heat of the reaction itself is not included'
}

export const neutralisationHeatBasis = {
  formula: 'H = n(H2SO4) · (Q(∞) − Q(r)) − n(eq) · ΔH(base)',
  source:
    'heats of solution as for dilution; enthalpies of NBS Tables 1982 (from memory, not checked against the print); the heat of the reaction itself is not included'
}

export const riseBasis = {
  formula: 'ΔT = H / (m · c_p), no heat escaping',
  source:
    'heat capacity of sulfuric acid of that strength, Zeleznik 1991; the heat of the reaction itself is not included'
}

/**
 * Enthalpy of taking up a mol of hydrogen ion, of the base in water and of its dissolving where it
 * comes as a solid, kJ: negative where heat is released. Carbonates as carbonate ions, their carbon
 * dioxide staying in the water.
 */
const enthalpies_kJ_per_mol: Record<
  Base,
  { readonly reacting: number; readonly dissolving: number }
> = {
  ammonia: { reacting: -52.22, dissolving: 0 },
  'sodium hydroxide': { reacting: -55.84, dissolving: -44.5 },
  'calcium hydroxide': { reacting: -55.84, dissolving: -16.72 / 2 },
  // Dissolving cools: left out, as it need not come first.
  'sodium hydrogen carbonate': { reacting: -7.64, dissolving: 0 },
  // −2.20 with carbon dioxide as gas, −20.29 for its dissolving, over two hydrogen ions.
  'sodium carbonate': { reacting: -22.49 / 2, dissolving: -26.7 / 2 },
  'calcium carbonate': { reacting: -22.49 / 2, dissolving: -13.05 / 2 }
}

/** From this strength on a neutraliser is taken to go in as a solid, %. */
const SOLID_PERCENT = 90

/** How a neutraliser of a strength in % goes in. */
export const formOf = (strength_percent: number): 'dissolved' | 'solid' =>
  strength_percent >= SOLID_PERCENT ? 'solid' : 'dissolved'

/** Limit of the heats taken together, as part of the heat. */
const LIMIT = 0.05

/** What every heat here is multiplied by. */
export const heatDoubt: Estimate = measured(1, rectangular(LIMIT), 'heats of solution')

const ACID = molarMass_g_per_mol('H2SO4')
const WATER = molarMass_g_per_mol('H2O')

/** Mol of water a mol of acid. */
const ratioOf = (water_g: number, acid_g: number) => water_g / WATER / (acid_g / ACID)

export interface DilutionInputs {
  /** Sulfuric acid itself, without its water, g. */
  acid_g: Estimate
  /** Water that the acid holds as sold, g. */
  ownWater_g: Estimate
  /** Water it is diluted with, g. */
  water_g: Estimate
}

/**
 * Heat of diluting sulfuric acid, both at 25 °C.
 *
 * @returns heat released, kJ; an estimate for planning, ±5 %
 * @throws DomainError when the acid is not above 0 or a mass of water is below 0
 */
export function heatOfDilution(inputs: DilutionInputs): Computed<keyof DilutionInputs | 'heats'> {
  requirePositive(inputs, 'acid_g', 'check the mass and strength of the acid')
  requireNotNegative(inputs, 'ownWater_g', 'check the strength of the acid')
  requireNotNegative(inputs, 'water_g', 'check the mass of water')
  return propagate(
    x => {
      const before = ratioOf(x.ownWater_g, x.acid_g)
      const after = ratioOf(x.ownWater_g + x.water_g, x.acid_g)
      return ((x.heats * x.acid_g) / ACID) * largerHeat(before, after)
    },
    { ...inputs, heats: heatDoubt }
  )
}

export interface NeutralisationInputs {
  /** Sulfuric acid itself, g. */
  acid_g: Estimate
  /** Water the acid is in when neutralising begins, g. */
  water_g: Estimate
  /** Hydrogen ion neutralised, at most two a molecule, mol. */
  neutralised_mol: Estimate
}

/**
 * Heat of neutralising sulfuric acid from the strength it has, to the end or in part: of the acid's
 * remaining dilution as much as of its hydrogen ions.
 *
 * @returns heat released, kJ; an upper bound, as all of it is taken to come at once
 * @throws DomainError when the acid is not above 0, the water or the amount below 0, or more is
 *   neutralised than the acid gives
 */
export function heatOfNeutralisation(
  base: Base,
  form: ReturnType<typeof formOf>,
  inputs: NeutralisationInputs
): Computed<keyof NeutralisationInputs | 'heats'> {
  requirePositive(inputs, 'acid_g', 'check the mass and strength of the acid')
  requireNotNegative(inputs, 'water_g', 'check the mass of water')
  requireNotNegative(inputs, 'neutralised_mol', 'check the neutraliser')
  const most = (2 * inputs.acid_g.value) / ACID
  if (inputs.neutralised_mol.value > most * (1 + 1e-9))
    throw new DomainError(
      'neutralised_mol',
      `at most ${Number(most.toPrecision(5))}, two a molecule of acid`,
      inputs.neutralised_mol.value,
      'count only what the acid can give'
    )
  const { reacting, dissolving } = enthalpies_kJ_per_mol[base]
  const perMol = reacting + (form === 'solid' ? dissolving : 0)
  return propagate(
    x => {
      const part = x.neutralised_mol / ((2 * x.acid_g) / ACID)
      const diluting =
        ((part * x.acid_g) / ACID) * largerHeat(ratioOf(x.water_g, x.acid_g), Infinity)
      return x.heats * (diluting - x.neutralised_mol * perMol)
    },
    { ...inputs, heats: heatDoubt }
  )
}

export interface RiseInputs {
  /** Heat released, kJ. */
  heat_kJ: Estimate
  /** Sulfuric acid in the liquor, g; less of it neutralised counts as none. */
  acid_g: Estimate
  /** The liquor in all, g. */
  liquor_g: Estimate
}

/**
 * Rise of temperature if no heat escapes and nothing boils. Solids in the liquor are left out, which
 * makes it larger.
 *
 * @returns rise, K
 * @throws DomainError when the heat is below 0, or the liquor is not above 0 or less than its acid
 */
export function adiabaticRise(inputs: RiseInputs): Computed<keyof RiseInputs> {
  requireNotNegative(inputs, 'heat_kJ', 'check the masses')
  requirePositive(inputs, 'liquor_g', 'check the masses of acid and water')
  requireNotNegative(inputs, 'acid_g', 'check the acid')
  if (inputs.acid_g.value > inputs.liquor_g.value * (1 + 1e-9))
    throw new DomainError(
      'acid_g',
      'at most the liquor it is part of',
      inputs.acid_g.value,
      'check the masses of acid and water'
    )
  return propagate(x => {
    const percent = Math.min(100, Math.max(0, (100 * x.acid_g) / x.liquor_g))
    return (1000 * x.heat_kJ) / (x.liquor_g * capacityAt(percent))
  }, inputs)
}
