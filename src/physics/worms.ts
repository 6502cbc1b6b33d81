/**
 * A furnace run: how light the worms are, what left as gas, and how many times the bed grew.
 *
 *     wormDensity       ρ = 1000 · m / V
 *     lossOnExpansion   L = 100 · (mᵢ − mₒ) / mᵢ
 *     expansionRatio    R = EV · ρb
 *
 * The expansion ratio counts volumes, the expansion volume counts millilitres a gram: one is not the
 * other.
 *
 * Source: the definitions of density, of a loss by mass and of a ratio of volumes.
 */

import { requireAtMost, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const wormDensityBasis = {
  formula: 'ρ = m / V',
  source: 'definition of bulk density; m is the mass of the worms, not of the flake'
}

export const lossOnExpansionBasis = {
  formula: 'L = 100 · (m in − m out) / m in',
  source: 'definition of a loss by mass'
}

export const expansionRatioBasis = {
  formula: 'R = EV · ρ bulk',
  source: 'volume after expansion over bulk volume before it'
} as const

/** Converts mL to L, exact. */
const ML_PER_L = 1000

export interface WormDensityInputs {
  /** Worms, g. */
  mass_g: Estimate
  /** Their poured volume, mL. */
  volume_mL: Estimate
}

/**
 * Density of poured worms.
 *
 * @returns mass per volume, g/L
 * @throws DomainError when the mass or the volume is not above 0
 */
export function wormDensity(inputs: WormDensityInputs): Computed<keyof WormDensityInputs> {
  requirePositive(inputs, 'mass_g', 'check the mass of the worms')
  requirePositive(inputs, 'volume_mL', 'check the volume of the worms')
  return propagate(x => (ML_PER_L * x.mass_g) / x.volume_mL, inputs)
}

export interface LossInputs {
  /** Flake put into the furnace, g. */
  massIn_g: Estimate
  /** Worms taken out, g. */
  massOut_g: Estimate
}

/**
 * Mass lost on expansion.
 *
 * @returns loss as part of the mass put in, %
 * @throws DomainError when nothing went in, or more came out than went in
 */
export function lossOnExpansion(inputs: LossInputs): Computed<keyof LossInputs> {
  requirePositive(inputs, 'massIn_g', 'check the mass of flake put in')
  requireNotNegative(inputs, 'massOut_g', 'check the mass of worms taken out')
  requireAtMost(
    inputs,
    'massOut_g',
    'massIn_g',
    'flake loses mass in the furnace: check both masses'
  )
  return propagate(x => 100 * (1 - x.massOut_g / x.massIn_g), inputs)
}

export interface ExpansionRatioInputs {
  /** Expansion volume, mL/g. */
  expansionVolume_mL_per_g: Estimate
  /** Bulk density of the flake, g/mL; whether loose or tapped belongs beside the figure. */
  bulkDensity_g_per_mL: Estimate
}

/**
 * How many times its own bulk volume the flake fills after expansion.
 *
 * @returns volume after over volume before, dimensionless
 * @throws DomainError when the expansion volume or the bulk density is not above 0
 */
export function expansionRatio(inputs: ExpansionRatioInputs): Computed<keyof ExpansionRatioInputs> {
  requirePositive(inputs, 'expansionVolume_mL_per_g', 'check the expansion volume')
  requirePositive(inputs, 'bulkDensity_g_per_mL', 'check the bulk density')
  return propagate(x => x.expansionVolume_mL_per_g * x.bulkDensity_g_per_mL, inputs)
}
