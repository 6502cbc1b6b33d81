/** What a material lot is made of, by the names that models know substances under. */

import { type AmmoniaConvention, strengthAsNH3 } from '../chemistry/ammonia-strength.ts'
import { type Base, isAcid, isBase, type Acid } from '../chemistry/neutralisation.ts'
import { type Estimate, exact } from '../metrology/estimate.ts'
import type { Material } from '../records/types.ts'
import { type Ingredient, type Strength, strengthOf } from './strength.ts'
import { substanceName } from './substance-name.ts'

/** One substance of a material, its part as stated; ammonia as the label counts it. */
export interface Part extends Strength {
  readonly name: string
  readonly as?: AmmoniaConvention | undefined
}

export const partsOf = ({ lot, composition = [] }: Material): Part[] =>
  composition.map(part => ({
    name: substanceName(part.substance),
    ...strengthOf(lot, part),
    as: countedAs(part)
  }))

/** What the per cents of ammonia are of; its density is tabulated as NH3. */
const countedAs = ({ as, substance, density_g_per_cm3 }: Ingredient): Part['as'] =>
  density_g_per_cm3 ? 'NH3' : (as ?? (/ammonium hydroxide/iu.test(substance) ? 'NH4OH' : undefined))

/** Its part of a substance, %; exactly 0 where it is not named. */
export const percentOf = (material: Material, name: string): Estimate =>
  partsOf(material).find(part => part.name === name)?.percent ?? exact(0)

export const acidsOf = (material: Material): { acid: Acid; percent: Estimate }[] =>
  partsOf(material).flatMap(({ name, percent }) =>
    isAcid(name) && percent.value > 0 ? [{ acid: name, percent }] : []
  )

/**
 * The base of a neutraliser, with its strength.
 *
 * @returns undefined where it holds none; ammonia as NH3
 * @throws DomainError for ammonia of which nobody said what its per cents are of
 */
export function baseOf(material: Material): { base: Base; percent: Estimate } | undefined {
  const part = partsOf(material).find(({ name, percent }) => isBase(name) && percent.value > 0)
  if (!part || !isBase(part.name)) return undefined
  const percent =
    part.name === 'ammonia'
      ? strengthAsNH3({ strength_percent: part.percent }, part.as)
      : part.percent
  return { base: part.name, percent }
}

interface Untold {
  readonly why: string
  readonly hint: string
  /** Told as an error where it stands. */
  readonly isMistake: boolean
}

/** Why nobody can tell how strong a material is: ammonia meant two ways, a density that two acids have. */
export function unsaidOf(material: Material): Untold | undefined {
  const parts = partsOf(material)
  const open = parts.find(({ unsaid }) => unsaid)?.unsaid
  if (open)
    return {
      why: open.why,
      isMistake: open.isMistake ?? false,
      hint: open.between
        ? "write 'fraction:' instead, from the supplier’s certificate or a titration"
        : "look at the label, and write 'side: weaker' or 'side: stronger' beside the density"
    }
  return parts.some(one => one.name === 'ammonia' && !one.as && one.percent.value > 0)
    ? {
        why: `${material.lot} does not say whether its ammonia is counted as NH3 or as NH4OH, which is 0.486 of it`,
        isMistake: false,
        hint: "look at the label, and add 'as: NH3' or 'as: NH4OH' in its composition"
      }
    : undefined
}

export const isUnsaid = (material: Material): boolean => unsaidOf(material) !== undefined

/** The cation its sulfate has, for the conductivity of what washing leaves. */
export const cationOf = (base: Base): 'ammonium' | 'sodium' | 'calcium' =>
  base === 'ammonia' ? 'ammonium' : base.startsWith('calcium') ? 'calcium' : 'sodium'
