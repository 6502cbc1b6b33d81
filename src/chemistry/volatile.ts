/**
 * Volatile matter of a sample put in undried, on dry basis.
 *
 *     L = 100 · (before − after) / (before − dish)
 *     V = 100 · (L − w) / (100 − w)
 *
 * The loss L includes the moisture w, which is taken out of it and out of the mass it refers to.
 * Furnace temperature, time and gas belong beside the figure.
 *
 * Source: loss by mass less moisture as in GB/T 3521, put on dry mass by definition.
 */

import { requirePercent } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { type WeighingInputs, requireWeighing } from './weighing.ts'

export const volatileBasis = {
  formula: 'V = (L − w) / (1 − w), L = (before − after) / (before − dish), w moisture',
  source: 'loss by mass less moisture as in GB/T 3521, of the dry mass'
} as const

export interface VolatileInputs extends WeighingInputs {
  /** Moisture of the sample as it went in, %; exactly 0 where it was dried first. */
  moisture_percent: Estimate
}

/**
 * Volatile matter, dry basis.
 *
 * @returns loss beyond the moisture, of the dry mass, %; below 0 where the loss was less than the
 *   moisture
 * @throws DomainError unless dish ≤ after ≤ before with a sample in the dish, and 0 ≤ moisture < 100
 */
export function volatileDry(inputs: VolatileInputs): Computed<keyof VolatileInputs> {
  requireWeighing(inputs)
  requirePercent(inputs, 'moisture_percent', 'check the moisture')
  return propagate(x => {
    const loss_percent = (100 * (x.before_g - x.after_g)) / (x.before_g - x.dish_g)
    return (100 * (loss_percent - x.moisture_percent)) / (100 - x.moisture_percent)
  }, inputs)
}
