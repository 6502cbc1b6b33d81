/**
 * Creep relaxation: what foil lets go of the load it was clamped with.
 *
 *     R = 100 · (D0 − D f) / D0
 *
 * D0 is how far the calibrated bolt was stretched when it was tightened, D f how far it still is at the
 * end, read as the nut is loosened; the load goes with the stretch. Load, temperature and time are part
 * of the figure, and so is the stiffness of the rig: figures of different rigs are no comparison.
 *
 * Source: ASTM F38-95, 3.2 and 3.3 for what is called relaxation, the part of the initial stress that is lost,
 * and for the stress being told by the length of the bolt; 8.2 for the two readings. The quotient follows.
 */

import { requireAtMost, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const creepBasis = {
  formula: 'R = (D0 − D_f) / D0, D0 stretch of the bolt when tightened, D_f at the end',
  source:
    'readings as in ASTM F38-95, method B, 8.2; relaxation as the part of the initial stress that is lost, 3.2 and 3.3'
} as const

export interface CreepInputs {
  /** Stretch of the bolt once it was tightened, mm. */
  initial_mm: Estimate
  /** Stretch that was left at the end, mm. */
  final_mm: Estimate
}

/**
 * Creep relaxation.
 *
 * @returns part of the load that was lost, %
 * @throws DomainError when the first stretch is not above 0, or the last is below 0 or above the first
 *   by more than noise
 */
export function creepRelaxation(inputs: CreepInputs): Computed<keyof CreepInputs> {
  requirePositive(inputs, 'initial_mm', 'check the reading of the tightened bolt')
  requireNotNegative(inputs, 'final_mm', 'check the reading at the end')
  requireAtMost(
    inputs,
    'final_mm',
    'initial_mm',
    'a clamped piece gains no load: check which is which'
  )
  return propagate(x => 100 * (1 - x.final_mm / x.initial_mm), inputs)
}
