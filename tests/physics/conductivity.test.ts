import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exact, uncertaintyOf } from '../../src/metrology/estimate.ts'
import {
  type Cation,
  conductivityAt25,
  leastConductivity_uS_per_cm,
  liquorConductivity
} from '../../src/physics/conductivity.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { simulate, expectAgreement } from '../metrology/monte-carlo.ts'

test.for([
  ['by hand: at 25 °C only the water comes off', 214, 1.4, 25, '212.6'],
  ['by hand: (214 − 1.4)/(1 − 0.02 · 2.2)', 214, 1.4, 22.8, '222.38'],
  ['by hand: (100 − 0)/(1 + 0.02 · 5)', 100, 0, 30, '90.909'],
  // 0.01 mol/L KCl: handbooks give 1278 µS/cm at 20 °C and 1413 at 25 °C (from memory), α = 0.0191.
  ['0.01 mol/L KCl at 20 °C, by α = 0.02: 1420, where a handbook has 1413', 1278, 0, 20, '1420']
] as const)('%s', ([, conductivity_uS_per_cm, water_uS_per_cm, temperature_C, printed]) => {
  const inputs = exactly({ conductivity_uS_per_cm, water_uS_per_cm, temperature_C })
  expect(asPrinted(conductivityAt25(inputs).value, printed)).toBe(printed)
})

test('the handbook’s KCl lies within the uncertainty of α', () => {
  const at20 = conductivityAt25(
    exactly({ conductivity_uS_per_cm: 1278, water_uS_per_cm: 0, temperature_C: 20 })
  )
  expect(Math.abs(at20.value - 1413)).toBeLessThan(uncertaintyOf(at20))
})

test('at 25 °C the coefficient does not matter; away from it, in proportion', () => {
  const u = (t: number) =>
    uncertaintyOf(
      conductivityAt25({
        conductivity_uS_per_cm: exact(200),
        water_uS_per_cm: exact(0),
        temperature_C: exact(t)
      })
    )
  expect(u(25)).toBe(0)
  expect(u(24)).toBeCloseTo((200 * 0.005) / Math.sqrt(3) / (0.98 * 0.98), 6)
})

test('the hydrogen ion of pH 3 alone gives 349.8 µS/cm (handbook λ°, from memory)', () => {
  expect(asPrinted(leastConductivity_uS_per_cm(3), '349.8')).toBe('349.8')
  expect(asPrinted(leastConductivity_uS_per_cm(4), '34.98')).toBe('34.98')
})

test.for([
  [[0, 0, 25], 'conductivity_uS_per_cm must be greater than 0, got 0'],
  [[10, -1, 25], 'water_uS_per_cm must be at least 0, got -1'],
  [[10, 0, 51], 'temperature_C must be from 0 to 50, got 51'],
  [[10, 0, -1], 'temperature_C must be from 0 to 50, got -1'],
  [[10, 0, NaN], 'temperature_C must be from 0 to 50, got NaN']
] as const)('refuses %o', ([[conductivity_uS_per_cm, water_uS_per_cm, temperature_C], message]) => {
  const inputs = exactly({ conductivity_uS_per_cm, water_uS_per_cm, temperature_C })
  expect(() => conductivityAt25(inputs)).toThrow(message)
})

test('k times the readings is k times the result', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), k => {
      const at = (factor: number) =>
        conductivityAt25(
          exactly({
            conductivity_uS_per_cm: factor * 214,
            water_uS_per_cm: factor * 1.4,
            temperature_C: 22
          })
        ).value
      expect(at(k) / at(1) / k).toBeCloseTo(1, 12)
    })
  )
})

test('trials of the distributions agree, the coefficient held: it is the model’s own', () => {
  const inputs = uncertain({
    conductivity_uS_per_cm: [214, 1.2],
    water_uS_per_cm: [1.4, 0.1],
    temperature_C: [22.8, 0.05]
  })
  const whole = conductivityAt25(inputs)
  const terms = [...whole.terms].filter(([name]) => !name.startsWith('temperature coefficient'))
  expectAgreement({ value: whole.value, terms: new Map(terms) }, simulate(conductivityAt25, inputs))
})

describe('dilute sulfuric acid with a sulfate', () => {
  const of = (cation: Cation, acid_mol_per_L: number, salt_mol_per_L: number) =>
    liquorConductivity(cation, exactly({ acid_mol_per_L, salt_mol_per_L })).value

  /**
   * Handbook molar conductivities at infinite dilution and 25 °C, a unit of charge, S·cm²/mol (from
   * memory): ½ H2SO4 429.6, ½ Na2SO4 129.8; the other sulfates by Kohlrausch's law from the chlorides,
   * NH4Cl 149.6, ½ CaCl2 135.8, NaCl 126.4.
   */
  test.for([
    ['sodium', 0.001, 0, 429.6],
    ['sodium', 0, 0.001, 129.8],
    ['ammonium', 0, 0.001, 129.8 + 149.6 - 126.4],
    ['calcium', 0, 0.001, 129.8 + 135.8 - 126.4],
    ['sodium', 0.001, 0.001, 429.6 + 129.8]
  ] as const)('%s, %f mol/L of acid, %f of salt: %f µS/cm', ([cation, acid, salt, expected]) => {
    expect(Math.abs(of(cation, acid, salt) / expected - 1)).toBeLessThan(0.005)
  })

  test('an ion below 0 is refused by name', () => {
    expect(() => of('sodium', -0.001, 0)).toThrow(/acid/u)
    expect(() => of('sodium', 0, -0.001)).toThrow(/salt/u)
  })

  test('trials of the distributions agree', () => {
    const inputs = uncertain({ acid_mol_per_L: [0.002, 0.00004], salt_mol_per_L: [0.003, 0.00006] })
    const run = (x: typeof inputs) => liquorConductivity('ammonium', x)
    expectAgreement(run(inputs), simulate(run, inputs))
  })
})
