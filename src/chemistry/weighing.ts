/** What drying, burning and the like share: a dish weighed empty, with the sample, and afterwards. */

import { DomainError, requireAtMost, requireNotNegative } from '../metrology/domain.ts'
import type { Estimate } from '../metrology/estimate.ts'

export interface WeighingInputs {
  /** Empty dish, g. */
  dish_g: Estimate
  /** Dish with the sample, g. */
  before_g: Estimate
  /** Dish with what is left, g. */
  after_g: Estimate
}

/** Throw DomainError unless dish ≤ after ≤ before but for noise, with a sample in the dish. */
export function requireWeighing({ dish_g, before_g, after_g }: WeighingInputs): void {
  const inputs = { dish_g, before_g, after_g }
  requireNotNegative(inputs, 'dish_g', 'check the mass of the empty dish')
  if (!(before_g.value > dish_g.value))
    throw new DomainError(
      'before_g',
      `greater than dish (${Number(dish_g.value.toPrecision(6))})`,
      before_g.value,
      'the dish with the sample weighs more than the empty one: check both'
    )
  requireAtMost(inputs, 'after_g', 'before_g', 'the sample cannot gain mass: weigh it again')
  requireAtMost(inputs, 'dish_g', 'after_g', 'the dish cannot lose mass: weigh it again')
}
