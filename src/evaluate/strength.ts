/** Strength of a substance that came in: as its label states it, or by the density of its solution. */

import { possibleFractions } from '../chemistry/hydrometer.ts'
import { isSolute } from '../chemistry/solutions.ts'
import { DomainError, inWords } from '../metrology/domain.ts'
import { type Estimate, exact } from '../metrology/estimate.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { Material, Records } from '../records/types.ts'
import { asStated } from './steps.ts'
import { substanceName } from './substance-name.ts'

export type Ingredient = NonNullable<Material['composition']>[number]
/** Which of two strengths a density is meant to be of. */
export type Side = NonNullable<Ingredient['side']>

export interface Strength {
  /** The strongest it may be, where that is not told. */
  readonly percent: Estimate
  readonly unsaid?: Unsaid
}

/** Why a strength is not told, and what it may be. */
export interface Unsaid {
  /** A sentence without a full stop. */
  readonly why: string
  readonly least_percent: number
  /** Whether it may be any strength from the least on, not one of the two alone. */
  readonly between: boolean
  /** A mistake in the record, told where it stands. */
  readonly isMistake?: true
}

/** The most there can be, where nothing tells. */
const ALL = exact(100)

/** The strength of one ingredient; where two or none are possible, why it is not told. */
export function strengthOf(lot: string, part: Ingredient): Strength {
  const name = substanceName(part.substance)
  if (part.fraction_percent) return { percent: asStated(part.fraction_percent, `${lot} ${name}`) }
  const given = densityOf(part)
  if (!given) return { percent: ALL }
  const told = byDensity(lot, name, given)
  return 'why' in told
    ? { percent: ALL, unsaid: { why: told.why, least_percent: 0, between: true, isMistake: true } }
    : told
}

const densityOf = ({
  density_g_per_cm3: density,
  temperature_C,
  side
}: Ingredient): ByDensity | undefined =>
  density && temperature_C ? { density, temperature_C, side } : undefined

interface ByDensity {
  readonly density: NonNullable<Ingredient['density_g_per_cm3']>
  readonly temperature_C: NonNullable<Ingredient['temperature_C']>
  readonly side?: Side | undefined
}

function byDensity(
  lot: string,
  name: string,
  { density, temperature_C, side }: ByDensity
): Strength | { why: string; hint: string } {
  if (!isSolute(name))
    return {
      why: `no table tells the strength of ${name} by its density`,
      hint: "write 'fraction:', from the label or the supplier’s certificate"
    }
  try {
    const { fractions_percent: all, between } = possibleFractions(name, {
      density_g_per_cm3: asStated(density, `${lot} density`),
      temperature_C: asStated(temperature_C, `${lot} temperature of the density`)
    })
    const [weaker, stronger] = all
    if (!weaker)
      return {
        why: `no ${name} that the table knows has a density of ${density.written}`,
        hint: 'check the reading, its temperature and its unit'
      }
    if (!stronger) return { percent: weaker }
    if (!between && side) return { percent: side === 'weaker' ? weaker : stronger }
    const of = `the density of ${lot}, ${density.written}, is`
    const why = between
      ? `${of} next to the greatest that ${name} has, and may be of any strength from ${shown(weaker)} % to ${shown(stronger)} %`
      : `${of} that of ${name} of ${shown(weaker)} % and of ${shown(stronger)} %`
    return { percent: stronger, unsaid: { why, least_percent: weaker.value, between } }
  } catch (error) {
    if (error instanceof DomainError)
      return {
        why: `tells no strength: its ${inWords(error.input)} ${error.reason}`,
        hint: error.hint
      }
    throw error
  }
}

const shown = ({ value }: Estimate) => Number(value.toPrecision(4))

/** Densities that tell no strength at all, wherever the lot goes. */
export const checkStrengths = ({ materials }: Records): Problem[] =>
  [...materials.values()].flatMap(entry =>
    (entry.record.composition ?? []).flatMap((part, index) => {
      const given = densityOf(part)
      const told = given && byDensity(entry.record.lot, substanceName(part.substance), given)
      return told && 'why' in told
        ? [
            problemAt(
              entry.at(['composition', index, 'density']),
              'INVALID_VALUE',
              told.why,
              told.hint
            )
          ]
        : []
    })
  )

/** The records with that side meant wherever a density has two strengths and none is said to be. */
export function withSide<Content extends Records>(content: Content, side: Side): Content {
  const materials = [...content.materials].map(([lot, entry]) => {
    const composition = entry.record.composition?.map(part =>
      densityOf(part) && !part.side ? { ...part, side } : part
    )
    return [
      lot,
      composition ? { ...entry, record: { ...entry.record, composition } } : entry
    ] as const
  })
  return { ...content, materials: new Map(materials) }
}
