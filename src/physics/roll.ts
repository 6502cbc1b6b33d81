/**
 * Length of a roll, and what its mass says of it.
 *
 *     L = Σ L_i            over the pieces between its splices
 *     L = m / (m″ · w)     from the mass of the roll, its areal mass and its width: a check on the first
 *
 * Source: definition of areal mass.
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const rollLengthBasis = {
  formula: 'L = Σ L_i, L_i pieces between the splices',
  source: 'sum of the pieces as measured'
} as const

export const rollWidthBasis = {
  formula: 'w = (Σ w_i) / n, n places along the roll',
  source: 'definition of the mean'
} as const

const MM_PER_M = 1000

/**
 * Length of the pieces of a roll together.
 *
 * @param pieces_m each in m, by the name it has in the working
 * @returns length, m
 * @throws DomainError when a piece is not above 0
 */
export function rollLength(pieces_m: Readonly<Record<string, Estimate>>): Computed {
  for (const piece of Object.keys(pieces_m)) requirePositive(pieces_m, piece, 'check the length')
  return propagate(x => Object.values(x).reduce((sum, piece) => sum + piece, 0), { ...pieces_m })
}

export interface RollMassInputs {
  /** Foil of the roll, without its core, g. */
  mass_g: Estimate
  arealMass_g_per_m2: Estimate
  width_mm: Estimate
}

/**
 * Length that mass, areal mass and width lead to.
 *
 * @returns length, m
 * @throws DomainError when an input is not above 0
 */
export function lengthByMass(inputs: RollMassInputs): Computed<keyof RollMassInputs> {
  for (const input of Object.keys(inputs) as (keyof RollMassInputs)[])
    requirePositive(inputs, input, 'check the reading')
  return propagate(x => (MM_PER_M * x.mass_g) / (x.arealMass_g_per_m2 * x.width_mm), inputs)
}
