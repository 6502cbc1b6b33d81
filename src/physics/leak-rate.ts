/**
 * Gas that leaks past or through a clamped ring of foil, by the pressure that a closed volume loses.
 *
 *     n = p · V / (R · T)
 *     λ = M · (n start − n end) / (t · π · d)
 *
 * Pressures are absolute, d is the mean diameter of the ring. Gas, pressure and the stress on the ring
 * are part of the figure. The gas is taken as ideal, which nitrogen and helium at 40 bar are within about
 * 2 % (from memory); the walls are taken as tight and as stiff.
 *
 * Source: the ideal gas; mass per time and length as DIN 28090-2 names it (unit from a datasheet primer of
 * DIN 28091-2; the procedure there was not seen). R: CODATA 2018, exact.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate, uncertaintyOf } from '../metrology/estimate.ts'

export const leakBasis = {
  formula:
    'λ = M · (p_1 / T_1 − p_2 / T_2) · V / (R · t · π · d), p absolute, d mean diameter of the ring',
  source: 'ideal gas; mass per time and length as in DIN 28090-2, whose procedure was not seen'
} as const

/** Molar gas constant, J/(mol·K). */
const R = 8.314462618

const ZERO_C = 273.15
const SECONDS_PER_MINUTE = 60
/** From g/mol, kPa, mL and mm to mg and m. */
const SCALE = 1000

/** Standard uncertainties by which a tight ring may seem to gain gas. */
const NOISE = 4

export interface LeakInputs {
  /** Closed volume of gas, mL. */
  volume_mL: Estimate
  /** Absolute pressures, kPa. */
  absoluteStart_kPa: Estimate
  absoluteEnd_kPa: Estimate
  /** Of the gas, °C. */
  temperatureStart_C: Estimate
  temperatureEnd_C: Estimate
  /** Between the two, min. */
  time_min: Estimate
  /** Mean diameter of the clamped ring, mm. */
  diameter_mm: Estimate
}

/**
 * Leak rate per length of the ring.
 *
 * @param gas_g_per_mol molar mass of the gas
 * @returns mass per time and mean circumference, mg/(s·m)
 * @throws DomainError when a size, a pressure or the time is not above 0, a temperature not above
 *   absolute zero, or gas was gained by more than noise
 */
export function leakRate(inputs: LeakInputs, gas_g_per_mol: number): Computed<keyof LeakInputs> {
  for (const input of [
    'volume_mL',
    'absoluteStart_kPa',
    'absoluteEnd_kPa',
    'time_min',
    'diameter_mm'
  ] as const)
    requirePositive(inputs, input, 'check the reading; pressures are absolute')
  for (const input of ['temperatureStart_C', 'temperatureEnd_C'] as const)
    if (!(inputs[input].value > -ZERO_C))
      throw new DomainError(input, 'above −273.15', inputs[input].value, 'check the temperature')
  const rate = propagate(x => {
    const lost =
      x.absoluteStart_kPa / kelvin(x.temperatureStart_C) -
      x.absoluteEnd_kPa / kelvin(x.temperatureEnd_C)
    const seconds = SECONDS_PER_MINUTE * x.time_min
    return (SCALE * gas_g_per_mol * lost * x.volume_mL) / (R * seconds * Math.PI * x.diameter_mm)
  }, inputs)
  if (rate.value < -NOISE * uncertaintyOf(rate))
    throw new DomainError(
      'absoluteEnd_kPa',
      'no more gas than at the start',
      inputs.absoluteEnd_kPa.value,
      'check both pressures, and whether the gas had come to one temperature'
    )
  return rate
}

const kelvin = (temperature_C: number) => temperature_C + ZERO_C
