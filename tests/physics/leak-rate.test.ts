import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { molarMass_g_per_mol } from '../../src/chemistry/molar-mass.ts'
import { leakRate } from '../../src/physics/leak-rate.ts'
import { leakGases } from '../../src/records/schemas/foil-tests.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const NITROGEN = molarMass_g_per_mol('N2')

/** A litre at 0 °C around a ring of one metre, that loses 0.1 kPa in a second: 1 mbar·L/s. */
const UNIT_LEAK = {
  volume_mL: 1000,
  absoluteStart_kPa: 100.1,
  absoluteEnd_kPa: 100,
  temperatureStart_C: 0,
  temperatureEnd_C: 0,
  time_min: 1 / 60,
  diameter_mm: 1000 / Math.PI
}

/** The same, with an atmosphere of it lost: its mass is that of a litre. */
const LITRE = { ...UNIT_LEAK, absoluteStart_kPa: 202.65, absoluteEnd_kPa: 101.325 }

// Densities at 0 °C and 101.325 kPa, g/L, as handbooks print them (from memory): real gases.
test.for([
  ['nitrogen', 1.2504],
  ['helium', 0.1785],
  ['methane', 0.7175]
] as const)('a litre of %s, %f g at 0 °C', ([gas, published]) => {
  const grams = leakRate(exactly(LITRE), molarMass_g_per_mol(leakGases[gas])).value / 1000
  expect(Math.abs(grams / published - 1)).toBeLessThan(0.003)
})

test('1 mbar·L/s is 59.2 cm³/min at 0 °C and 1013.25 mbar, as tables of leak rates have it', () => {
  const litre_mg = leakRate(exactly(LITRE), NITROGEN).value
  const leak_mg = leakRate(exactly(UNIT_LEAK), NITROGEN).value
  expect(asPrinted((60 * 1000 * leak_mg) / litre_mg, '59.2')).toBe('59.2')
})

test.for([
  // By hand: 28.014 · 251.4 · (4103.2/296.05 − 4089.5/296.15) · 1000 / (8.314462618 · 3600 · π · 70).
  ['nitrogen, 0.1 K warmer at the end', 4103.2, 4089.5, 22.9, 23, '0.05450'],
  ['nitrogen, one temperature', 4103.2, 4089.5, 23, 23, '0.04950'],
  ['nothing lost', 4100, 4100, 23, 23, '0.00000']
] as const)('%s', ([, start, end, from, to, printed]) => {
  const inputs = exactly({
    volume_mL: 251.4,
    absoluteStart_kPa: start,
    absoluteEnd_kPa: end,
    temperatureStart_C: from,
    temperatureEnd_C: to,
    time_min: 60,
    diameter_mm: 70
  })
  expect(asPrinted(leakRate(inputs, NITROGEN).value, printed)).toBe(printed)
})

test('is in proportion to volume and molar mass, against time and ring', () => {
  const scale = fc.double({ min: 0.1, max: 10, noNaN: true })
  const once = leakRate(exactly(UNIT_LEAK), NITROGEN).value
  fc.assert(
    fc.property(scale, scale, scale, scale, (volume, time, ring, mass) => {
      const inputs = exactly({
        ...UNIT_LEAK,
        volume_mL: volume * UNIT_LEAK.volume_mL,
        time_min: time * UNIT_LEAK.time_min,
        diameter_mm: ring * UNIT_LEAK.diameter_mm
      })
      const expected = (once * volume * mass) / (time * ring)
      expect(leakRate(inputs, mass * NITROGEN).value / expected).toBeCloseTo(1, 9)
    })
  )
})

describe('refuses', () => {
  test.for([
    [{ volume_mL: 0 }, 'volume_mL must be greater than 0, got 0'],
    [{ absoluteStart_kPa: 0 }, 'absoluteStart_kPa must be greater than 0, got 0'],
    [{ absoluteEnd_kPa: -1 }, 'absoluteEnd_kPa must be greater than 0, got -1'],
    [{ time_min: 0 }, 'time_min must be greater than 0, got 0'],
    [{ diameter_mm: 0 }, 'diameter_mm must be greater than 0, got 0'],
    [{ temperatureStart_C: -274 }, 'temperatureStart_C must be above −273.15, got -274'],
    [{ temperatureEnd_C: -273.15 }, 'temperatureEnd_C must be above −273.15, got -273.15'],
    [{ absoluteEnd_kPa: 101 }, 'absoluteEnd_kPa must be no more gas than at the start, got 101']
  ] as const)('%o', ([change, message]) => {
    expect(() => leakRate(exactly({ ...UNIT_LEAK, ...change }), NITROGEN)).toThrow(message)
  })
})

const noisy = uncertain({
  volume_mL: [251.4, 0.5],
  absoluteStart_kPa: [4103.2, 0.02],
  absoluteEnd_kPa: [4089.5, 0.02],
  temperatureStart_C: [22.9, 0.02],
  temperatureEnd_C: [23, 0.02],
  time_min: [60, 0.06],
  diameter_mm: [70, 0.1]
})

test('a tight ring may gain what gauge and thermometer explain', () => {
  const tight = { ...noisy, temperatureEnd_C: noisy.temperatureStart_C }
  const end = uncertain({ absoluteEnd_kPa: [4103.3, 0.06] })
  expect(leakRate({ ...tight, ...end }, NITROGEN).value).toBeLessThan(0)
})

test('more than they explain is refused', () => {
  const end = uncertain({ absoluteEnd_kPa: [4112, 0.06] })
  expect(() => leakRate({ ...noisy, ...end }, NITROGEN)).toThrow('no more gas than at the start')
})

test('trials of the distributions agree', () => {
  expectLinear(inputs => leakRate(inputs, NITROGEN), noisy)
})
