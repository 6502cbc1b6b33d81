/**
 * The standard curve of furnace tests for fire resistance, for reference beside a bench log.
 *
 *     T = 20 + 345 · log₁₀(8 t + 1)
 *
 * It is the temperature of a furnace's gas, not of a plate's back, and no bench burner follows it.
 *
 * Source: ISO 834-1, standard temperature–time curve, as in EN 1363-1.
 */

import { DomainError } from '../metrology/domain.ts'

export const fireCurveBasis = {
  formula: 'T = 20 + 345 · log_10(8 · t + 1)',
  source: 'ISO 834-1, standard temperature–time curve'
}

/**
 * Temperature of the standard curve.
 *
 * @param minutes since the start, not below 0
 * @returns gas temperature of the furnace, °C
 * @throws DomainError for a time before the start
 */
export function fireCurve_C(minutes: number): number {
  if (!(minutes >= 0 && minutes < Infinity))
    throw new DomainError('minutes', 'at least 0', minutes, 'the curve begins at 0 min')
  return 20 + 345 * Math.log10(8 * minutes + 1)
}
