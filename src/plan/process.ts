/** What a planned charge comes to: heats, neutralising, washing, gas. */

import { gasVolume, sulfurDioxideOfLoss, worstInRoom } from '../chemistry/expansion-gas.ts'
import { strengthAsNH3 } from '../chemistry/ammonia-strength.ts'
import { adiabaticRise, formOf, heatOfDilution, heatOfNeutralisation } from '../chemistry/heats.ts'
import { ACID_G_PER_EQUIVALENT, type Base, demand, isBase } from '../chemistry/neutralisation.ts'
import { drained, leftAfterWashes, washesTo } from '../chemistry/washing.ts'
import { partsOf } from '../evaluate/composition.ts'
import { substanceName } from '../evaluate/substance-name.ts'
import { acidIn, type ChargeLine, substanceIn } from '../evaluate/liquor.ts'
import { type Estimate, exact } from '../metrology/estimate.ts'
import type {
  PlannedGas,
  PlannedHeats,
  PlannedNeutralising,
  PlannedPart,
  PlannedWashing,
  PlanRequest
} from './types.ts'
import { Refusal } from './types.ts'

/** Planned parts as lines of a charge, their masses taken as exact. */
export const linesOf = (parts: readonly PlannedPart[]): ChargeLine[] =>
  parts.flatMap(({ role, takings }) =>
    takings.map(({ material, mass_g }, index) => ({
      lot: material.lot,
      role,
      material,
      mass_g: exact(mass_g),
      index
    }))
  )

/** What dissolves before any neutraliser: acid, oxidiser and water. */
export interface Charge {
  readonly acid_g: Estimate
  readonly ownWater_g: Estimate
  readonly water_g: Estimate
  readonly reacting_g: number
  readonly equivalents_mol: Estimate
}

const massOf = (lines: readonly ChargeLine[]) =>
  lines.reduce((all, { mass_g }) => all + mass_g.value, 0)

export function chargeOf(parts: readonly PlannedPart[]): Charge {
  const lines = linesOf(parts)
  const reacting = lines.filter(({ role }) => role === 'acid' || role === 'oxidiser')
  const water = lines.filter(({ role }) => role === 'water')
  return {
    acid_g: substanceIn(reacting, 'sulfuric acid'),
    ownWater_g: substanceIn(reacting, 'water'),
    water_g: exact(massOf(water)),
    reacting_g: massOf(reacting),
    equivalents_mol: acidIn(reacting)
  }
}

/** Parts of the planned water that the worst rise is looked for at. */
const SHARES = Array.from({ length: 100 }, (_, index) => (index + 1) / 100)

export function plannedHeats(charge: Charge): PlannedHeats | undefined {
  const { acid_g, ownWater_g, water_g, reacting_g } = charge
  if (!(acid_g.value > 0 && water_g.value > 0)) return undefined
  const rise = (water: Estimate) => {
    const heat_kJ = heatOfDilution({ acid_g, ownWater_g, water_g: water })
    return {
      heat_kJ,
      rise_K: adiabaticRise({ heat_kJ, acid_g, liquor_g: exact(reacting_g + water.value) })
    }
  }
  const planned = rise(water_g)
  return {
    dilution_kJ: planned.heat_kJ,
    dilutionRise_K: planned.rise_K,
    worstRise_K: Math.max(...SHARES.map(share => rise(exact(share * water_g.value)).rise_K.value))
  }
}

export interface Rinsing {
  readonly retained: { readonly value: number }
  readonly wash: { readonly value: number }
  readonly freeAcid_percent: { readonly value: number }
}

/** The washes that reach the recipe's target in the expected product. */
export function plannedWashing(
  charge: Charge,
  graphite_g: number,
  product_g: number,
  { retained, wash, freeAcid_percent }: Rinsing
): PlannedWashing {
  const retained_g = retained.value * graphite_g
  const wash_g = wash.value * graphite_g
  const dissolved_g = drainedAcid_g(charge, retained_g)
  const of = { dissolved_g, retained_g: exact(retained_g) }
  const washes = washesTo({
    ...of,
    wash_g: exact(wash_g),
    target_g: exact((freeAcid_percent.value / 100) * product_g)
  })
  const left = leftAfterWashes(
    of,
    Array.from({ length: washes }, () => exact(wash_g))
  )
  return {
    target_percent: freeAcid_percent.value,
    washes,
    wash_g,
    retained_g,
    acidLeft_g: left.value
  }
}

const drainedAcid_g = ({ equivalents_mol, reacting_g, water_g }: Charge, retained_g: number) =>
  drained({
    dissolved: exact(equivalents_mol.value * ACID_G_PER_EQUIVALENT),
    liquor_g: exact(reacting_g + water_g.value),
    retained_g: exact(retained_g)
  })

/**
 * Base and strength of the recipe's neutraliser.
 *
 * @throws Refusal for ammonia of which nobody said what its per cents are of
 */
export function neutraliserOf(
  part: PlannedPart | undefined,
  recipe: {
    readonly substance?: string | undefined
    readonly strength_percent?: { readonly value: number } | undefined
  },
  { ammonia }: PlanRequest
): { base: Base; percent: Estimate } | undefined {
  const base = substanceName(recipe.substance ?? '')
  if (!isBase(base)) return undefined
  const material = part?.takings[0]?.material
  const held = material && partsOf(material).find(({ name }) => name === base)
  const stated = held?.percent.value ?? recipe.strength_percent?.value
  if (stated === undefined)
    throw new Refusal(
      `the strength of ${base} is not known: state it in the recipe, or record a lot of it`
    )
  if (base !== 'ammonia') return { base, percent: exact(stated) }
  const convention = held?.as ?? ammonia
  if (convention === undefined)
    throw new Refusal(
      'nobody says whether the ammonia is counted as NH3 or as NH4OH, which is 0.486 of it: look at the label, and give --ammonia NH3 or --ammonia NH4OH'
    )
  return { base, percent: strengthAsNH3({ strength_percent: exact(stated) }, convention) }
}

export function plannedNeutralising(
  charge: Charge,
  { base, percent }: { readonly base: Base; readonly percent: Estimate },
  washing: PlannedWashing | undefined
): PlannedNeutralising | undefined {
  if (!(charge.acid_g.value > 0)) return undefined
  const of = (acid_g: number) =>
    demand(base, {
      equivalents_mol: exact(acid_g / ACID_G_PER_EQUIVALENT),
      strength_percent: percent
    })
  const all_g = demand(base, { equivalents_mol: charge.equivalents_mol, strength_percent: percent })
  const rise = (acid_g: number, liquor_g: number, base_g: number) =>
    adiabaticRise({
      heat_kJ: heatOfNeutralisation(base, formOf(percent.value), {
        acid_g: exact(acid_g),
        water_g: exact(Math.max(0, liquor_g - acid_g)),
        neutralised_mol: exact(acid_g / ACID_G_PER_EQUIVALENT)
      }),
      acid_g: exact(acid_g),
      liquor_g: exact(liquor_g + base_g)
    })
  const acid_g = charge.equivalents_mol.value * ACID_G_PER_EQUIVALENT
  const held_g = washing && drainedAcid_g(charge, washing.retained_g).value
  return {
    base,
    all_g,
    ...(washing && held_g !== undefined
      ? {
          drained_g: of(held_g),
          washed_g: of(washing.acidLeft_g),
          cakeRise_K: rise(held_g, washing.retained_g, of(held_g).value)
        }
      : {}),
    undilutedRise_K: rise(acid_g, Math.max(charge.reacting_g, acid_g), all_g.value)
  }
}

/** Gas of expanding all of the product, and the worst it could come to in the workshop's room. */
export function plannedGas(
  product_g: number,
  [loss_percent, lossFrom]: readonly [number, string],
  room: { readonly value: number; readonly written: string } | undefined
): PlannedGas {
  const of = { flake_g: exact(product_g), loss_percent: exact(loss_percent) }
  const sulfurDioxide_g = sulfurDioxideOfLoss(of)
  return {
    loss_percent,
    lossFrom,
    gas_L: gasVolume(of),
    sulfurDioxide_g,
    ...(room
      ? {
          inRoom_mg_per_m3: worstInRoom({ gas_g: sulfurDioxide_g, room_m3: exact(room.value) }),
          room: room.written
        }
      : {})
  }
}
