/** A charge planned from the producer's own recipe: what to take, what to expect, what it comes to. */

import type { OverLimit, ChargeLimit, ChargeMasses } from '../evaluate/charge-limits.ts'
import type { AmmoniaConvention } from '../chemistry/ammonia-strength.ts'
import type { Side } from '../evaluate/strength.ts'
import type { CautionBlock } from '../hazards/cautions.ts'
import type { Estimate } from '../metrology/estimate.ts'
import type { Grade, Material } from '../records/types.ts'

/** What is asked for: a mass of product, a mass of graphite, or what a lot has left. */
export type PlanWish =
  { readonly product_g: number } | { readonly graphite_g: number } | { readonly useUp: string }

export interface PlanRequest {
  readonly grade: string
  readonly wish: PlanWish
  readonly vessel?: string
  readonly ammonia?: AmmoniaConvention
  /** Which of two strengths is meant where a density has both. */
  readonly acid?: Side
  readonly day: string
}

/** A mass to take from one material lot. */
export interface Taking {
  readonly material: Material
  /** The container to take it from, where the lot stands in several. */
  readonly container?: { readonly number: string; readonly left_g: number }
  readonly mass_g: number
  /** What the lot has before. */
  readonly left_g: number
}

export interface PlannedPart {
  readonly role: string
  readonly name: string
  readonly mass_g: number
  readonly takings: readonly Taking[]
  /** At 20 °C, where a density is tabulated. */
  readonly volume_mL?: Estimate
}

/** Yields of this workshop's own batches of the grade. */
export interface PastYields {
  readonly n: number
  readonly mean_percent?: number
  /** Within which the next is expected with 95 % probability; absent below two batches. */
  readonly next?: { readonly low_percent: number; readonly high_percent: number }
}

export interface PlannedHeats {
  readonly dilution_kJ: Estimate
  readonly dilutionRise_K: Estimate
  /** Largest with any smaller amount of water, down to none. */
  readonly worstRise_K: number
}

export interface PlannedNeutralising {
  readonly base: string
  /** As sold, for all acid charged. */
  readonly all_g: Estimate
  /** As sold, for what the drained cake holds, and what it holds after the washes. */
  readonly drained_g?: Estimate
  readonly washed_g?: Estimate
  readonly cakeRise_K?: Estimate
  /** Of all acid at once, undiluted. */
  readonly undilutedRise_K: Estimate
}

export interface PlannedWashing {
  readonly target_percent: number
  readonly washes: number
  readonly wash_g: number
  readonly retained_g: number
  readonly acidLeft_g: number
}

export interface PlannedGas {
  readonly loss_percent: number
  readonly lossFrom: string
  readonly gas_L: Estimate
  readonly sulfurDioxide_g: Estimate
  readonly inRoom_mg_per_m3?: Estimate
  readonly room?: string
}

export interface PlannedWaste {
  readonly liquor_g: number
  readonly acid_g: number
  readonly washWater_g?: number
}

export interface Plan {
  readonly grade: Grade
  readonly day: string
  readonly graphite_g: number
  readonly parts: readonly PlannedPart[]
  readonly masses: ChargeMasses
  readonly limit: ChargeLimit
  readonly yields: PastYields
  readonly product_g?: { readonly expected: number; readonly low?: number; readonly high?: number }
  readonly heats?: PlannedHeats
  readonly neutralising?: PlannedNeutralising
  readonly washing?: PlannedWashing
  readonly gas?: PlannedGas
  readonly waste: PlannedWaste
  readonly cautions: CautionBlock
}

/** A plan, or every reason why there is none. */
export type Planned =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly reasons: readonly string[]; readonly over?: OverLimit }

/** A plan cannot be made; the sentence says why, without a full stop. */
export class Refusal extends Error {
  override readonly name = 'Refusal'
}
