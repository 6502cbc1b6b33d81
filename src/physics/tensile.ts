/**
 * Tensile strength of a strip of foil, and its force per width.
 *
 *     strength          σ = F / (w · t)      of the original cross-section
 *     force per width   f = F / w            which the thickness, the worst known input, is not in
 *
 * Source: stress on the original cross-section as in ASTM F152; the definition of force per width.
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const tensileBasis = {
  formula: 'σ = F / (w · t), w · t before the test',
  source: 'stress on the original cross-section, as in ASTM F152'
} as const

export const forcePerWidthBasis = {
  formula: 'f = F / w',
  source: 'definition of force per width; no thickness is in it'
} as const

export interface PullInputs {
  /** Highest force before the strip broke, N. */
  force_N: Estimate
  /** Width of the strip, mm. */
  width_mm: Estimate
}

export interface TensileInputs extends PullInputs {
  /** Thickness of the strip before the test, mm. */
  thickness_mm: Estimate
}

/**
 * Tensile strength.
 *
 * @returns stress at the highest force, N/mm², which is MPa
 * @throws DomainError when the force or a dimension is not above 0
 */
export function tensileStrength(inputs: TensileInputs): Computed<keyof TensileInputs> {
  requirePull(inputs)
  requirePositive(inputs, 'thickness_mm', 'check the thickness of the strip')
  return propagate(x => x.force_N / (x.width_mm * x.thickness_mm), inputs)
}

/**
 * Highest force per width.
 *
 * @returns force per width, N/mm
 * @throws DomainError when the force or the width is not above 0
 */
export function forcePerWidth({ force_N, width_mm }: PullInputs): Computed<keyof PullInputs> {
  const inputs = { force_N, width_mm }
  requirePull(inputs)
  return propagate(x => x.force_N / x.width_mm, inputs)
}

function requirePull({ force_N, width_mm }: PullInputs): void {
  requirePositive({ force_N }, 'force_N', 'check the highest force')
  requirePositive({ width_mm }, 'width_mm', 'check the width of the strip')
}
