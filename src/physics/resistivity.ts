/**
 * Electrical resistance of foil: sheet resistance by four points in a line or by van der Pauw,
 * resistivity of a strip, and conductivity.
 *
 *     four points    Rs = C · F · V / I       disc: C = π / (ln 2 + ln(((d/s)² + 3) / ((d/s)² − 3)))
 *     van der Pauw   exp(−π Ra / Rs) + exp(−π Rb / Rs) = 1
 *     strip          ρ = R · w · t / L
 *     conductivity   σ = 1 / ρ
 *
 * s is the spacing of the points, d the diameter of the disc, C = π / ln 2 on a sheet without end. F is
 * the correction for thickness on an insulating base, 1 up to t/s = 0.3; the form with hyperbolic sines
 * often given for it is worse than none below t/s = 0.9. Foil conducts far less through its thickness than along it, so that F = 1 can fail for thick foil even there.
 *
 * Source: F. M. Smits, Bell System Technical Journal 37 (1958) 711, tables II and III (from memory,
 * not checked against the print; recomputed by the method of images); L. J. van der Pauw, Philips
 * Research Reports 13 (1958) 1 (from memory); ASTM C611, 2.1.1, for the bar.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const fourPointBasis = {
  formula:
    'R_s = C · F · V / I, C = π / (ln 2 + ln(((d/s)² + 3) / ((d/s)² − 3))), on a disc of diameter d',
  source:
    'F. M. Smits, Bell System Technical Journal 37 (1958) 711 (from memory, not checked against the print)'
} as const

export const vanDerPauwBasis = {
  formula: 'exp(−π · R_a / R_s) + exp(−π · R_b / R_s) = 1',
  source:
    'L. J. van der Pauw, Philips Research Reports 13 (1958) 1 (from memory, not checked against the print)'
} as const

export const stripBasis = {
  formula: 'ρ = R · w · t / L, L between the voltage contacts',
  source: 'definition of resistivity, for a bar as in ASTM C611'
} as const

export const conductivityOfFoilBasis = {
  formula: 'σ = 1 / ρ',
  source: 'definition of conductivity'
} as const

const MILLI = 1000

/** Geometry of a sheet without end. */
const SHEET_FACTOR = Math.PI / Math.LN2

/** Correction for thickness by t/s, insulating base. */
const thicknessFactors: readonly (readonly [ratio: number, factor: number])[] = [
  [0, 1],
  [0.3, 1],
  [0.4, 0.9995],
  [0.5, 0.9974],
  [0.5555, 0.9948],
  [0.625, 0.9898],
  [0.7143, 0.9797],
  [0.8333, 0.96],
  [1, 0.9215],
  [1.1111, 0.8907],
  [1.25, 0.8491],
  [1.4286, 0.7938],
  [1.6667, 0.7225],
  [2, 0.6337]
]

/**
 * Correction for geometry of four points at the middle of a disc.
 *
 * @param ratio diameter over spacing
 * @throws DomainError below 3, where the points lie on the rim
 */
export function discFactor(ratio: number): number {
  if (!(ratio >= 3))
    throw new DomainError('diameter_mm', 'at least 3 spacings', ratio, 'cut a larger disc')
  const square = ratio * ratio
  return Math.PI / (Math.LN2 + Math.log((square + 3) / (square - 3)))
}

/**
 * Correction for thickness, interpolated linearly between the values of the table.
 *
 * @param ratio thickness over spacing
 * @throws DomainError below 0 or above 2, where the table ends
 */
export function thicknessFactor(ratio: number): number {
  const next = thicknessFactors.findIndex(([at]) => at >= ratio)
  if (!(ratio >= 0) || next < 0)
    throw new DomainError('thickness_mm', 'at most 2 spacings', ratio, 'use a wider probe')
  const [b, high] = thicknessFactors[next]!
  const [a, low] = thicknessFactors[Math.max(0, next - 1)]!
  return a === b ? high : low + ((high - low) * (ratio - a)) / (b - a)
}

export interface FourPointInputs {
  /** Voltage between the inner points, mV, thermal voltages taken out by reversing the current. */
  voltage_mV: Estimate
  /** Current through the outer points, mA. */
  current_mA: Estimate
  /** Distance of neighbouring points, mm. */
  spacing_mm: Estimate
  /** Thickness of the foil, mm. */
  thickness_mm: Estimate
  /** Of a disc, probed at its middle, mm; left out where the sheet reaches 40 spacings and more. */
  diameter_mm?: Estimate
}

/**
 * Sheet resistance by four points in a line.
 *
 * @returns resistance of a square, mΩ
 * @throws DomainError when an input is not above 0, the disc is below 3 spacings or the foil above 2
 */
export function fourPointResistance(inputs: FourPointInputs): Computed {
  const { diameter_mm, ...sheet } = inputs
  const all: Record<string, Estimate> = { ...sheet, ...(diameter_mm ? { diameter_mm } : {}) }
  for (const input of Object.keys(all)) requirePositive(all, input, 'check the reading')
  return propagate(x => {
    const geometry =
      x['diameter_mm'] === undefined
        ? SHEET_FACTOR
        : discFactor(x['diameter_mm'] / x['spacing_mm']!)
    const thickness = thicknessFactor(x['thickness_mm']! / x['spacing_mm']!)
    return (geometry * thickness * MILLI * x['voltage_mV']!) / x['current_mA']!
  }, all)
}

export interface VanDerPauwInputs {
  /** Voltage over current, contacts along one edge, mΩ. */
  first_mOhm: Estimate
  /** The same along the neighbouring edge, mΩ. */
  second_mOhm: Estimate
}

/** Relative change below which the iteration has ended. */
const CONVERGED = 1e-15

/**
 * Sheet resistance by van der Pauw's relation.
 *
 * @returns resistance of a square, mΩ
 * @throws DomainError when a resistance is not above 0
 */
export function vanDerPauw(inputs: VanDerPauwInputs): Computed<keyof VanDerPauwInputs> {
  requirePositive(inputs, 'first_mOhm', 'check voltage and current')
  requirePositive(inputs, 'second_mOhm', 'check voltage and current')
  return propagate(x => solveVanDerPauw(x.first_mOhm, x.second_mOhm), inputs)
}

/** Newton's method on 1/Rs: the relation is convex there, and it converges from the arithmetic mean. */
function solveVanDerPauw(first: number, second: number): number {
  let y = (2 * Math.LN2) / (Math.PI * (first + second))
  for (let step = 0; step < 100; step++) {
    const [a, b] = [Math.exp(-Math.PI * first * y), Math.exp(-Math.PI * second * y)]
    const change = (a + b - 1) / (Math.PI * (first * a + second * b))
    y += change
    if (Math.abs(change) <= CONVERGED * y) break
  }
  return 1 / y
}

export interface StripInputs {
  /** Four-wire resistance between the voltage contacts, mΩ. */
  resistance_mOhm: Estimate
  width_mm: Estimate
  thickness_mm: Estimate
  /** Between the voltage contacts, mm. */
  length_mm: Estimate
}

/**
 * Resistivity of a strip.
 *
 * @returns resistivity, µΩ·m: mΩ times mm
 * @throws DomainError when the resistance or a dimension is not above 0
 */
export function stripResistivity(inputs: StripInputs): Computed<keyof StripInputs> {
  for (const input of Object.keys(inputs) as (keyof StripInputs)[])
    requirePositive(inputs, input, 'check the reading')
  return propagate(x => (x.resistance_mOhm * x.width_mm * x.thickness_mm) / x.length_mm, inputs)
}

/**
 * Conductivity from a resistivity.
 *
 * @returns conductivity, kS/m
 * @throws DomainError when the resistivity is not above 0
 */
export function foilConductivity(inputs: {
  resistivity_uOhmm: Estimate
}): Computed<'resistivity_uOhmm'> {
  requirePositive(inputs, 'resistivity_uOhmm', 'check the resistivity')
  return propagate(x => MILLI / x.resistivity_uOhmm, inputs)
}
