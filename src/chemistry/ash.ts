/**
 * Ash on dry basis.
 *
 *     A = 100 · (after − dish) / ((before − dish) · (1 − w / 100))
 *
 * Source: residue by mass as in ASTM C561 and GB/T 3521, of the dry mass. Scatter: ASTM C561-91, 10.2.
 */

import { requirePercent } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { type WeighingInputs, requireWeighing } from './weighing.ts'

export const ashBasis = {
  formula: 'A = (after − dish) / ((before − dish) · (1 − w)), w moisture',
  source: 'residue by mass as in ASTM C561 and GB/T 3521, of the dry mass'
} as const

/** One sample of graphite in four laboratories: its ash, and their standard deviation within. */
const ROUND_ROBIN = { ash_percent: 0.7286, within_percent: 0.0127 }

/**
 * How far readings of one sample scatter within a laboratory: as in the round robin, and in proportion
 * to the ash where there is more of it (common practice, no source).
 *
 * @returns standard deviation, %
 */
export const ashScatter_percent = (ash_percent: number): number =>
  ROUND_ROBIN.within_percent * Math.max(1, ash_percent / ROUND_ROBIN.ash_percent)

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
