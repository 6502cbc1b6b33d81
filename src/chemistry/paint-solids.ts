/**
 * Solids of a paint: what is left of it when it has dried.
 *
 *     s = 100 · (after − dish) / (before − dish)
 *
 * Temperature and time belong beside the figure. What cures by reaction keeps more than what dries.
 *
 * Source: definition of the non-volatile matter of a paint by mass, as ISO 3251 applies it (from memory,
 * not checked against the print).
 */

import { DomainError } from '../metrology/domain.ts'
import { type Computed, propagate } from '../metrology/estimate.ts'
import { requireWeighing, type WeighingInputs } from './weighing.ts'

export const paintSolidsBasis = {
  formula: 's = (after − dish) / (before − dish)',
  source: 'non-volatile matter by mass, as in ISO 3251 (from memory, not checked against the print)'
}

/**
 * Solids of a paint.
 *
 * @returns non-volatile matter, of the wet paint, %
 * @throws DomainError unless dish ≤ after ≤ before with a sample in the dish, of which something is left
 */
export function paintSolids(inputs: WeighingInputs): Computed<keyof WeighingInputs> {
  requireWeighing(inputs)
  const { dish_g, after_g } = inputs
  if (!(after_g.value > dish_g.value))
    throw new DomainError(
      'after_g',
      `greater than dish (${Number(dish_g.value.toPrecision(6))})`,
      after_g.value,
      'a paint leaves a film when it dries: check both'
    )
  return propagate(x => (100 * (x.after_g - x.dish_g)) / (x.before_g - x.dish_g), inputs)
}
