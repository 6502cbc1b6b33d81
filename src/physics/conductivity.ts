/**
 * Conductivity of a slurry's filtrate at 25 °C, less that of the water.
 *
 *     κ25 = (κ − κ water) / (1 + α · (t − 25))
 *
 * The meter reads the filtrate as it is, uncompensated. Conductivity rises by 1.5 to 2.5 % a kelvin,
 * by the ions there are: α = 0.02 ± 0.005 per kelvin holds them all, and counts little near 25 °C. A
 * meter that compensates by itself is recorded at 25 °C.
 *
 * Source: linear temperature compensation to 25 °C as in ISO 7888, range of α for salts and acids from
 * handbooks (both from memory, not checked against the print).
 */

import { DomainError, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  measured,
  propagate,
  rectangular
} from '../metrology/estimate.ts'

export const conductivityBasis = {
  formula: 'κ₂₅ = (κ − κ water) / (1 + α · (t − 25 °C)), α 0.020 ± 0.005 per K',
  source:
    'linear temperature compensation as in ISO 7888; range of α from handbooks (from memory, not checked against the print)'
} as const

/** Rise of conductivity with temperature, per kelvin, as part of that at 25 °C. */
const temperatureCoefficient_per_K: Estimate = measured(
  0.02,
  rectangular(0.005),
  'temperature coefficient of conductivity',
  Infinity,
  { is: 'known', what: 'temperature coefficient of conductivity' }
)

/** Molar conductivity of the hydrogen ion at infinite dilution, 25 °C, S·cm²/mol: handbook value. */
const LAMBDA_H = 349.8

const REFERENCE_C = 25
const LITRE_CM3 = 1000
const MICRO = 1e6

export interface ConductivityInputs {
  /** Filtrate as the meter shows it, µS/cm. */
  conductivity_uS_per_cm: Estimate
  /** Water used, by the same meter, µS/cm; exactly 0 where it was not read. */
  water_uS_per_cm: Estimate
  /** Temperature of the filtrate, °C. */
  temperature_C: Estimate
}

/**
 * Conductivity at 25 °C.
 *
 * @returns conductivity, µS/cm
 * @throws DomainError when the filtrate is not above 0, the water below 0, or the temperature outside 0
 *   to 50 °C, where the compensation is not linear
 */
export function conductivityAt25(
  inputs: ConductivityInputs
): Computed<keyof ConductivityInputs | 'coefficient'> {
  requirePositive(inputs, 'conductivity_uS_per_cm', 'check the reading and its unit')
  requireNotNegative(inputs, 'water_uS_per_cm', 'check the reading of the water')
  const { value } = inputs.temperature_C
  if (!(value >= 0 && value <= 50))
    throw new DomainError('temperature_C', 'from 0 to 50', value, 'let it come to room temperature')
  return propagate(
    x =>
      (x.conductivity_uS_per_cm - x.water_uS_per_cm) /
      (1 + x.coefficient * (x.temperature_C - REFERENCE_C)),
    { ...inputs, coefficient: temperatureCoefficient_per_K }
  )
}

/**
 * Conductivity that the hydrogen ion of a pH has by itself at 25 °C: no filtrate can have much less.
 *
 * @returns conductivity, µS/cm
 */
export const leastConductivity_uS_per_cm = (pH: number): number =>
  ((LAMBDA_H * MICRO) / LITRE_CM3) * Math.exp(-pH * Math.LN10)

/** Molar conductivities at infinite dilution and 25 °C a unit of charge, S·cm²/mol: handbook values. */
const lambda = { sulfate: 80, ammonium: 73.5, sodium: 50.1, calcium: 59.5 } as const
export type Cation = Exclude<keyof typeof lambda, 'sulfate'>

export interface LiquorInputs {
  /** Hydrogen ion of sulfuric acid, both steps, mol/L. */
  acid_mol_per_L: Estimate
  /** Sulfate of a neutraliser, by charge, mol/L. */
  salt_mol_per_L: Estimate
}

/**
 * Conductivity of dilute sulfuric acid with a sulfate, from their ions at infinite dilution: an upper
 * bound, some 10 to 30 % above what a slurry of washed flake shows.
 *
 * @returns conductivity at 25 °C, µS/cm
 * @throws DomainError when a concentration is below 0
 */
export function liquorConductivity(
  cation: Cation,
  inputs: LiquorInputs
): Computed<keyof LiquorInputs> {
  requireNotNegative(inputs, 'acid_mol_per_L', 'check the acid')
  requireNotNegative(inputs, 'salt_mol_per_L', 'check the neutraliser')
  return propagate(
    x =>
      (MICRO / LITRE_CM3) *
      (x.acid_mol_per_L * (LAMBDA_H + lambda.sulfate) +
        x.salt_mol_per_L * (lambda[cation] + lambda.sulfate)),
    inputs
  )
}
