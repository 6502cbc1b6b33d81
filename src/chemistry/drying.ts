/**
 * Moisture: loss on drying.
 *
 *     w = 100 · (before − after) / (before − dish)
 *
 * Temperature and time belong beside the figure. Drying that drives off acid counts it as moisture.
 *
 * Source: the definition of a loss by mass, as ASTM C562 and GB/T 3521 apply it to graphite.
 */

import { type Computed, propagate } from '../metrology/estimate.ts'
import { type WeighingInputs, requireWeighing } from './weighing.ts'

export const moistureBasis = {
  formula: 'w = (before − after) / (before − dish)',
  source: 'loss on drying by mass, as in ASTM C562 and GB/T 3521'
} as const

/**
 * Moisture of a sample.
 *
 * @returns loss on drying, of the mass as received, %
 * @throws DomainError unless dish ≤ after ≤ before and there was a sample in the dish
 */
export function moisture(inputs: WeighingInputs): Computed<keyof WeighingInputs> {
  requireWeighing(inputs)
  return propagate(x => (100 * (x.before_g - x.after_g)) / (x.before_g - x.dish_g), inputs)
}
