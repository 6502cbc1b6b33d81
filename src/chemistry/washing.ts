/**
 * Washing by dilution: what a wet cake holds back is mixed with fresh water, and drained to the same
 * wetness.
 *
 *     left after n washes   a(n) = a(0) · Π r / (r + w)
 *     washes to a target    n ≥ ln(a(0) / target) / ln((r + w) / r)
 *     drained               a′ = a · r / L
 *
 * L is all the liquor before draining, r what the cake holds back of it, w the water of one wash. The
 * model takes each wash to mix completely and nothing to come out of the flake itself; acid between the
 * layers comes out slowly, so that what is found is more than the model leaves, and the number of
 * washes is the least there can be.
 * It holds alike for acid, salt and oxidiser, for all that is dissolved.
 *
 * Source: mass balance of a well-mixed wash.
 */

import {
  DomainError,
  requireAtMost,
  requireNotNegative,
  requirePositive
} from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const washBasis = {
  formula: 'a = a0 · Π r / (r + w), r liquor held back by the cake, w water of each wash',
  source: 'mass balance of well-mixed washes; what leaves the flake itself slowly is not in it'
}

export interface WashInputs {
  /** What is dissolved before the first wash, g. */
  dissolved_g: Estimate
  /** Liquor that the drained cake holds back, g. */
  retained_g: Estimate
}

/**
 * What a cake still holds of a dissolved substance.
 *
 * @param washes_g water of each wash in turn, g
 * @returns mass left, g
 * @throws DomainError when a mass is below 0 or the liquor held back is not above 0
 */
export function leftAfterWashes(inputs: WashInputs, washes_g: readonly Estimate[]): Computed {
  requireNotNegative(inputs, 'dissolved_g', 'check what was charged')
  requirePositive(inputs, 'retained_g', 'weigh the wet cake and the dry product')
  const washes = Object.fromEntries(washes_g.map((wash, i) => [`wash${i + 1}_g`, wash]))
  for (const name of Object.keys(washes))
    requireNotNegative(washes, name, 'check the water of this wash')
  const names = Object.keys(washes)
  return propagate<string>(
    x =>
      names.reduce(
        (left, name) => (left * x.retained_g!) / (x.retained_g! + x[name]!),
        x.dissolved_g!
      ),
    { ...inputs, ...washes }
  )
}

export interface DrainInputs {
  /** What is dissolved, in any unit. */
  dissolved: Estimate
  /** Liquor it is dissolved in, g. */
  liquor_g: Estimate
  /** Liquor that stays in the cake, g. */
  retained_g: Estimate
}

/**
 * What stays in a cake that was drained.
 *
 * @returns dissolved substance left, in its unit
 * @throws DomainError when something dissolved is below 0, a liquor is not above 0, or more stays than
 *   there was
 */
export function drained(inputs: DrainInputs): Computed<keyof DrainInputs> {
  requireNotNegative(inputs, 'dissolved', 'check what was charged')
  requirePositive(inputs, 'liquor_g', 'check the water and acid charged')
  requirePositive(inputs, 'retained_g', 'the wet cake weighs more than the dry product: check both')
  requireAtMost(inputs, 'retained_g', 'liquor_g', 'a cake cannot hold more than there was')
  return propagate(x => (x.dissolved * x.retained_g) / x.liquor_g, inputs)
}

export interface TargetInputs extends WashInputs {
  /** What may be left, g. */
  target_g: Estimate
  /** Water of one wash, g. */
  wash_g: Estimate
}

/** Washes beyond which no workshop goes: the target, or the wash, is a slip. */
const MOST_WASHES = 100

/**
 * The least number of equal washes that leaves no more than a target.
 *
 * @returns whole washes, 0 where none is needed
 * @throws DomainError as leftAfterWashes does, when the target or the wash is not above 0, or when more
 *   than 100 washes would be needed
 */
export function washesTo(inputs: TargetInputs): number {
  requireNotNegative(inputs, 'dissolved_g', 'check what was charged')
  requirePositive(inputs, 'retained_g', 'weigh the wet cake and the dry product')
  requirePositive(inputs, 'target_g', 'nothing at all is out of reach of washing')
  requirePositive(inputs, 'wash_g', 'a wash needs water')
  const { dissolved_g, retained_g, target_g, wash_g } = inputs
  const factor = (retained_g.value + wash_g.value) / retained_g.value
  let left = dissolved_g.value
  // The last wash may fall short by rounding alone.
  for (let washes = 0; washes <= MOST_WASHES; washes += 1) {
    if (left <= target_g.value * (1 + 1e-12)) return washes
    left /= factor
  }
  throw new DomainError(
    'wash_g',
    `enough to reach the target within ${MOST_WASHES} washes`,
    wash_g.value,
    'check the target, and the water of one wash'
  )
}
