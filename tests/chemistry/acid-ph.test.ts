import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { filtratePH } from '../../src/chemistry/acid-ph.ts'
import { uncertaintyOf } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const slurry = { mass_g: 10, water_mL: 100 }
const pH = (freeAcid_percent: number, rest = slurry) =>
  filtratePH(exactly({ freeAcid_percent, ...rest })).value

test.for([
  [0.17, '2.5'],
  [0.7, '2.0'],
  [6, '1.2']
] as const)(
  'from K2 and charge balance, by hand and to the digits that the neglects leave: 10 g in 100 mL, %f %',
  ([freeAcid, printed]) => {
    expect(asPrinted(pH(freeAcid), printed)).toBe(printed)
  }
)

test('pH 2 is reached between 0.65 % (no activity) and 0.70 % (with it)', () => {
  expect(pH(0.65)).toBeGreaterThan(2)
  expect(pH(0.7)).toBeLessThan(2)
})

/** Solved independently by another root finder with the same constants. */
test.for([
  [0.1, '2.74465'],
  [0.17, '2.53425'],
  [1, '1.86698'],
  [6, '1.21841'],
  [20, '0.76946']
] as const)('independent solution of the same equations: %f %', ([freeAcid, printed]) => {
  expect(asPrinted(pH(freeAcid), printed)).toBe(printed)
})

test.for([
  ['0.005 mol/L of sulfuric acid', 0.005, 2.1, 0.05],
  ['0.05 mol/L of sulfuric acid', 0.05, 1.2, 0.1]
] as const)('handbook, rounded (from memory): %s', ([, c, expected, within]) => {
  // 100 g of sample a litre: w = c · M, in %
  expect(Math.abs(pH(c * 98.072) - expected)).toBeLessThan(within)
})

test('a sample without acid leaves water: pH 7.00; a net alkali is alkaline', () => {
  expect(asPrinted(pH(0), '7.00')).toBe('7.00')
  expect(pH(-0.1)).toBeGreaterThan(10)
  expect(pH(-0.1)).toBeLessThan(12)
})

describe('outside the domain', () => {
  test.for([
    [{ mass_g: 0, water_mL: 100 }, 'mass_g must be greater than 0, got 0'],
    [{ mass_g: 10, water_mL: 0 }, 'water_mL must be greater than 0, got 0']
  ] as const)('%o', ([rest, message]) => {
    expect(() => pH(1, rest)).toThrow(message)
  })
})

const percent = fc.integer({ min: 1, max: 2000 }).map(hundredths => hundredths / 100)

test('only the concentration counts: half the sample with twice the acid is the same', () => {
  fc.assert(
    fc.property(percent, freeAcid => {
      expect(pH(2 * freeAcid, { mass_g: 5, water_mL: 100 })).toBeCloseTo(pH(freeAcid), 10)
      expect(pH(freeAcid, { mass_g: 20, water_mL: 200 })).toBeCloseTo(pH(freeAcid), 10)
    })
  )
})

test('more acid is a lower pH, and never by more than both protons or less than one', () => {
  fc.assert(
    fc.property(percent, freeAcid => {
      const doubled = pH(freeAcid) - pH(2 * freeAcid)
      expect(doubled).toBeGreaterThan(0.2)
      expect(doubled).toBeLessThan(Math.log10(2) + 1e-6)
    })
  )
})

test('very dilute acid gives both protons: pH of 10⁻⁵ mol/L is 4.70', () => {
  expect(asPrinted(pH(1e-5 * 98.072), '4.70')).toBe('4.70')
})

test('dilute acid at first order: u(pH) = 0.434 · u(w)/w', () => {
  const result = filtratePH(
    uncertain({ freeAcid_percent: [0.01, 0.0002], mass_g: [10, 0], water_mL: [100, 0] })
  )
  expect(uncertaintyOf(result)).toBeCloseTo(0.434 * 0.02, 3)
})

test('trials of the distributions agree', () => {
  expectLinear(
    filtratePH,
    uncertain({ freeAcid_percent: [0.17, 0.0007], mass_g: [10, 0.005], water_mL: [100, 0.2] })
  )
})
