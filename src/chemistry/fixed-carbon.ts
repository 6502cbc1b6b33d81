/**
 * Carbon by difference, on two bases that sellers of expandable graphite mix up.
 *
 *     fixedCarbon           FC = 100 − A − V
 *     devolatilisedCarbon   C  = 100 − A / (1 − V / 100)
 *
 * What was taken up between the layers counts as volatile, so the fixed carbon of a 99 % flake reads
 * some 85 to 88 %. The second figure is the carbon of what is left once the volatile matter is gone.
 *
 * Source: fixed carbon by difference as in GB/T 3521; the second basis by definition.
 */

import { DomainError, requirePercent, withUnitOf } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const fixedCarbonBasis = {
  formula: 'FC = 100 % − A − V, A ash and V volatile matter, both dry basis',
  source: 'fixed carbon by difference, as in GB/T 3521'
} as const

export const devolatilisedCarbonBasis = {
  formula: 'C = 100 % − A / (1 − V), A ash and V volatile matter, both dry basis',
  source: 'carbon by difference, of the mass left without volatile matter'
} as const

export interface CarbonInputs {
  /** Ash, dry basis, %. */
  ash_percent: Estimate
  /** Volatile matter, dry basis, %. */
  volatile_percent: Estimate
}

/**
 * Fixed carbon by difference.
 *
 * @returns mass fraction of the dry sample, %
 * @throws DomainError when the ash is below 0 by more than noise, or ash and volatile matter exceed 100 %
 */
export function fixedCarbon(inputs: CarbonInputs): Computed<keyof CarbonInputs> {
  requireRoom(inputs)
  return propagate(x => 100 - x.ash_percent - x.volatile_percent, inputs)
}

/**
 * Carbon by difference on devolatilised basis.
 *
 * @returns mass fraction of what is left without volatile matter, %
 * @throws DomainError as fixedCarbon does, or when all is volatile
 */
export function devolatilisedCarbon(inputs: CarbonInputs): Computed<keyof CarbonInputs> {
  requireRoom(inputs)
  return propagate(x => 100 - x.ash_percent / (1 - x.volatile_percent / 100), inputs)
}

function requireRoom(inputs: CarbonInputs): void {
  const { ash_percent, volatile_percent } = inputs
  requirePercent({ ash_percent }, 'ash_percent', 'check the ash weighings')
  const { value } = volatile_percent
  if (!(value < 100 && ash_percent.value + value <= 100))
    throw new DomainError(
      'volatile_percent',
      `below 100 and, with the ash of ${withUnitOf(ash_percent.value, 'ash_percent')}, at most 100`,
      value,
      'ash and volatile matter cannot exceed the sample: check both'
    )
}
