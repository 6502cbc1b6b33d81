/**
 * Strength of ammonia water. '10 %' can mean NH3 or 'NH4OH' (NH3·H2O); the second is less than half as
 * strong, so that a charge neutralised by the wrong reading stays acid. It is asked for, never guessed.
 *
 *     w(NH3) = w(NH4OH) · M(NH3) / M(NH3·H2O)
 *
 * Source: molar masses.
 */

import { DomainError, requirePercent } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

/** What the per cents of a bottle of ammonia water are of. */
export type AmmoniaConvention = 'NH3' | 'NH4OH'

const NH3_PER_NH4OH = molarMass_g_per_mol('NH3') / molarMass_g_per_mol('NH3·H2O')

/**
 * Strength of ammonia water as NH3.
 *
 * @param convention what the label's per cents are of; refused where nobody said
 * @returns mass fraction of NH3, %
 * @throws DomainError without a convention, or when the strength is outside 0 to below 100
 */
export function strengthAsNH3(
  inputs: { strength_percent: Estimate },
  convention: AmmoniaConvention | undefined
): Computed<'strength_percent'> {
  requirePercent(inputs, 'strength_percent', 'check the label')
  if (convention === undefined)
    throw new DomainError(
      'strength_percent',
      'stated as NH3 or as NH4OH: the second is 0.486 of the first',
      inputs.strength_percent.value,
      'look at the label or certificate, and say which'
    )
  return propagate(x => x.strength_percent * (convention === 'NH3' ? 1 : NH3_PER_NH4OH), inputs)
}
