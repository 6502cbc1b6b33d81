/**
 * What a test, a step or a store was set to: what it can be at all, and what it usually is.
 *
 * A condition is no figure, so no model weighs it; yet figures are told with it, and a creep at 1000
 * times the temperature would print as solemnly as others. Beyond what is possible a record is
 * refused; beyond what is usual a check warns, and the record stands.
 *
 * Source: absolute zero by the SI; graphite sublimes before 3650 °C at ordinary pressure, and water is
 * liquid between 0 and 100 °C (from memory). What is usual is this project's own judgement of what a
 * small workshop and the laboratories it asks can meet.
 */

import type { UnitName } from '../metrology/units.ts'
import type { Reading } from '../metrology/written.ts'
import type { FieldPath } from '../problem.ts'

export type Bounds = readonly [least: number, most: number]

export interface Condition {
  readonly unit: UnitName
  readonly usual: Bounds
  /** Above 0 where nothing is said; of temperatures above absolute zero. */
  readonly possible?: Bounds
}

/** No temperature lies below it. */
export const ABSOLUTE_ZERO_C = -273.15

/** Below where graphite is gone. */
const ofGraphite: Bounds = [ABSOLUTE_ZERO_C, 3650]
const liquidWater: Bounds = [0, 100]
const anyTemperature: Bounds = [ABSOLUTE_ZERO_C, Infinity]

export const conditions = {
  // The process
  'charged temperature': { unit: '°C', possible: anyTemperature, usual: [-20, 60] },
  'charged density': { unit: 'g/cm³', usual: [0.6, 2.5] },
  'step temperature': { unit: '°C', possible: ofGraphite, usual: [-30, 300] },
  'step pH': { unit: '1', possible: [-3, 17], usual: [-1.5, 14] },
  'step conductivity': { unit: 'µS/cm', usual: [0.05, 1e6] },
  'furnace temperature': { unit: '°C', possible: ofGraphite, usual: [150, 1400] },
  'furnace log': { unit: '°C', possible: ofGraphite, usual: [-20, 1400] },
  dwell: { unit: 's', usual: [0.1, 86_400] },
  'pressing pressure': { unit: 'MPa', usual: [0.05, 500] },
  'storage temperature': { unit: '°C', possible: anyTemperature, usual: [-30, 60] },
  // Tests of flake
  onset: { unit: '°C', possible: ofGraphite, usual: [60, 400] },
  'heating rate': { unit: 'K/min', usual: [0.1, 1000] },
  'end point': { unit: '1', possible: [0, 14], usual: [3, 10.5] },
  extract: { unit: 'mL', usual: [5, 5000] },
  aliquot: { unit: 'mL', usual: [0.5, 2000] },
  'loose density': { unit: 'g/mL', usual: [0.1, 1.5] },
  'soak time': { unit: 'h', usual: [0.1, 5000] },
  'soak temperature': { unit: '°C', possible: liquidWater, usual: [2, 98] },
  // Tests of foil
  'clamping load': { unit: 'kN', usual: [0.1, 500] },
  'clamping stress': { unit: 'MPa', usual: [0.5, 300] },
  'clamped temperature': { unit: '°C', possible: ofGraphite, usual: [-200, 700] },
  'clamped time': { unit: 'h', usual: [0.1, 20_000] },
  'gas volume': { unit: 'mL', usual: [0.5, 200_000] },
  'ring diameter': { unit: 'mm', usual: [5, 3000] },
  'gas pressure': { unit: 'kPa', usual: [1, 30_000] },
  'gas temperature': { unit: '°C', possible: anyTemperature, usual: [-50, 400] },
  'leak time': { unit: 'min', usual: [0.1, 50_000] },
  'probe spacing': { unit: 'mm', usual: [0.1, 20] },
  'disc diameter': { unit: 'mm', usual: [2, 500] },
  'oxidation temperature': { unit: '°C', possible: ofGraphite, usual: [300, 1100] },
  'oxidation time': { unit: 'h', usual: [0.1, 5000] },
  'conduction temperature': { unit: '°C', possible: ofGraphite, usual: [-200, 1000] },
  'heat capacity': { unit: 'J/(g·K)', usual: [0.3, 2.3] },
  // Coating panels
  'plate side': { unit: 'mm', usual: [10, 3000] },
  'plate thickness': { unit: 'mm', usual: [0.2, 60] },
  'film density': { unit: 'g/cm³', usual: [0.3, 3] },
  'back temperature': { unit: '°C', possible: anyTemperature, usual: [-30, 1500] },
  'moment known within': { unit: 's', usual: [0.01, 300] }
} as const satisfies Record<string, Condition>

export type ConditionName = keyof typeof conditions

/** A reading outside what is usual of its condition. */
interface Unusual extends Reading {
  readonly unusual: ConditionName
}

/** The same reading; marked where it lies outside what is usual. */
export function marked(reading: Reading, name: ConditionName): Reading {
  const [least, most] = conditions[name].usual
  if (reading.value >= least && reading.value <= most) return reading
  const unusual: Unusual = { ...reading, unusual: name }
  return unusual
}

const isUnusual = (value: object): value is Unusual => 'unusual' in value && 'resolution' in value

/** Every condition of a typed record that lies outside what is usual, with its place. */
export function unusualIn(
  part: unknown,
  field: FieldPath = []
): { readonly field: FieldPath; readonly reading: Unusual }[] {
  if (typeof part !== 'object' || part === null) return []
  if (isUnusual(part)) return [{ field, reading: part }]
  if ('resolution' in part && 'written' in part) return []
  const entries: [string | number, unknown][] = Array.isArray(part)
    ? part.map((value, index) => [index, value])
    : Object.entries(part)
  return entries.flatMap(([name, value]) => unusualIn(value, [...field, name]))
}
