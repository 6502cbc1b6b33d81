/** What a material lot is made of, by the names that models know substances under. */

import { type AmmoniaConvention, strengthAsNH3 } from '../chemistry/ammonia-strength.ts'
import { type Base, isAcid, isBase, type Acid } from '../chemistry/neutralisation.ts'
import { type Estimate, exact } from '../metrology/estimate.ts'
import type { Material } from '../records/types.ts'
import { asStated } from './steps.ts'

/** One substance of a material, its part as stated; ammonia as the label counts it. */
export interface Part {
  readonly name: string
  readonly percent: Estimate
  readonly as?: AmmoniaConvention | undefined
}

const aliases: Readonly<Record<string, string>> = {
  'sodium bicarbonate': 'sodium hydrogen carbonate',
  'caustic soda': 'sodium hydroxide',
  'ammonia solution': 'ammonia',
  'aqueous ammonia': 'ammonia',
  'ammonium hydroxide': 'ammonia',
  'orthophosphoric acid': 'phosphoric acid',
  'glacial acetic acid': 'acetic acid',
  'deionised water': 'water'
}

/** A substance as the models call it: 'Sulphuric acid' is 'sulfuric acid'. */
export function substanceName(written: string): string {
  const plain = written.trim().toLowerCase().replace(/sulph/gu, 'sulf')
  return aliases[plain] ?? plain
}

export const partsOf = ({ lot, composition = [] }: Material): Part[] =>
  composition.map(({ substance, fraction_percent, as }) => ({
    name: substanceName(substance),
    percent: asStated(fraction_percent, `${lot} ${substanceName(substance)}`),
    as: as ?? (/ammonium hydroxide/iu.test(substance) ? 'NH4OH' : undefined)
  }))

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

/** Whether it holds ammonia whose strength may be meant two ways. */
export const isUnsaid = (material: Material): boolean =>
  partsOf(material).some(
    ({ name, as, percent }) => name === 'ammonia' && as === undefined && percent.value > 0
  )

/** The cation its sulfate has, for the conductivity of what washing leaves. */
export const cationOf = (base: Base): 'ammonium' | 'sodium' | 'calcium' =>
  base === 'ammonia' ? 'ammonium' : base.startsWith('calcium') ? 'calcium' : 'sodium'
