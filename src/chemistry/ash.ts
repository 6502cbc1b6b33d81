/**
 * Ash on dry basis.
 *
 *     A = 100 · (after − dish) / ((before − dish) · (1 − w / 100))
 *
 * Source: residue by mass as in ASTM C561 and GB/T 3521, of the dry mass.
 */

import { requirePercent } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { type WeighingInputs, requireWeighing } from './weighing.ts'

export const ashBasis = {
  formula: 'A = (after − dish) / ((before − dish) · (1 − w)), w moisture',
  source: 'residue by mass as in ASTM C561 and GB/T 3521, of the dry mass'
}

export interface AshInputs extends WeighingInputs {
  /** Moisture of the sample as it went in, %; exactly 0 where it was dried first. */
  moisture_percent: Estimate
}

/**
 * Ash, dry basis.
 *
 * @returns residue after burning, of the dry mass, %
 * @throws DomainError unless dish ≤ after ≤ before with a sample in the dish, and 0 ≤ moisture < 100
 */
export function ashDry(inputs: AshInputs): Computed<keyof AshInputs> {
  requireWeighing(inputs)
  requirePercent(inputs, 'moisture_percent', 'check the moisture')
  return propagate(x => {
    const dry_g = (x.before_g - x.dish_g) * (1 - x.moisture_percent / 100)
    return (100 * (x.after_g - x.dish_g)) / dry_g
  }, inputs)
}
