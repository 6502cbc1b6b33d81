/**
 * Thermal conductivity of foil in its plane: measured by its diffusivity, or estimated from how it
 * conducts current.
 *
 *     measured    k = α · ρ · c        mm²/s · g/cm³ · J/(g·K) = W/(m·K)
 *     estimated   k = L · σ · T
 *
 * In graphite the lattice carries the heat, so that L is no constant of nature: it was found for sheets
 * of natural graphite, and is some 270 times that of metals. The estimate is a check on a figure, and
 * never stands for one.
 *
 * Source: definition of thermal diffusivity. L: 6.6 · 10⁻⁶ W·Ω/K² in Scientific Reports 10 (2020),
 * s41598-020-75393-y; 5.4 to 5.8 · 10⁻⁶ from conductivities of heat and current of foils of 0.7 and
 * 1.75 g/cm³ in Nanomaterials 14 (2024) 1162.
 */

import { requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const thermalBasis = {
  formula: 'k = α · ρ · c, α diffusivity, ρ foil density, c heat capacity',
  source: 'definition of thermal diffusivity'
} as const

export const thermalEstimateBasis = {
  formula: 'k = L · σ · T, σ conductivity of the strip, T absolute temperature',
  source:
    'L 5.4 to 6.6 · 10⁻⁶ W·Ω/K², between Nanomaterials 14 (2024) 1162 and Scientific Reports 10 (2020) 75393'
} as const

/** Where L of natural graphite foils was found to lie, 10⁻⁶ W·Ω/K². */
export const LORENZ_RANGE = [5.4, 6.6] as const

const ZERO_C = 273.15
/** From 10⁻⁶ W·Ω/K² and kS/m to W/(m·K²). */
const SCALE = 1e-3

export interface ThermalInputs {
  /** Thermal diffusivity in the plane, mm²/s. */
  diffusivity_mm2_per_s: Estimate
  foilDensity_g_per_cm3: Estimate
  /** Specific heat capacity at the temperature of the test, J/(g·K). */
  heatCapacity_J_per_gK: Estimate
}

/**
 * Thermal conductivity by diffusivity.
 *
 * @returns conductivity, W/(m·K)
 * @throws DomainError when an input is not above 0
 */
export function thermalConductivity(inputs: ThermalInputs): Computed<keyof ThermalInputs> {
  for (const input of Object.keys(inputs) as (keyof ThermalInputs)[])
    requirePositive(inputs, input, 'check the reading')
  return propagate(
    x => x.diffusivity_mm2_per_s * x.foilDensity_g_per_cm3 * x.heatCapacity_J_per_gK,
    inputs
  )
}

export interface ThermalEstimateInputs {
  /** In the plane, kS/m. */
  conductivity_kS_per_m: Estimate
  temperature_C: Estimate
  /** L, 10⁻⁶ W·Ω/K². */
  lorenz: Estimate
}

/**
 * Thermal conductivity as the electrical one suggests it.
 *
 * @returns estimate, W/(m·K)
 * @throws DomainError when the conductivity or L is not above 0
 */
export function thermalEstimate(
  inputs: ThermalEstimateInputs
): Computed<keyof ThermalEstimateInputs> {
  requirePositive(inputs, 'conductivity_kS_per_m', 'check the conductivity of the strip')
  requirePositive(inputs, 'lorenz', 'check L')
  return propagate(
    x => SCALE * x.lorenz * x.conductivity_kS_per_m * (x.temperature_C + ZERO_C),
    inputs
  )
}
