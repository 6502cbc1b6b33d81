/**
 * What foil loses when it is held hot in air.
 *
 *     L = 100 · (m dry − m end) / m dry
 *
 * Temperature and hours are part of the figure: the loss is not in proportion to time, so that none is
 * given per hour.
 *
 * Source: definition of a loss by mass, of the mass after preconditioning, as in API Std 622, 6.1.1.
 */

import { requireAtMost, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const oxidationLossBasis = {
  formula: 'L = (m dry − m end) / m dry',
  source: 'definition of a loss by mass, of the preconditioned mass, as in API Std 622, 6.1.1'
} as const

export interface OxidationInputs {
  /** Piece once it was dried, g. */
  dry_g: Estimate
  /** What is left of it, g. */
  end_g: Estimate
}

/**
 * Oxidation loss.
 *
 * @returns loss of the dry mass, %
 * @throws DomainError when the dry mass is not above 0, or the piece gained mass beyond noise
 */
export function oxidationLoss(inputs: OxidationInputs): Computed<keyof OxidationInputs> {
  requirePositive(inputs, 'dry_g', 'check the mass of the dry piece')
  requireNotNegative(inputs, 'end_g', 'check what was left')
  requireAtMost(inputs, 'end_g', 'dry_g', 'a piece does not gain mass in air: weigh both again')
  return propagate(x => 100 * (1 - x.end_g / x.dry_g), inputs)
}
