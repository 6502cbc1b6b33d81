import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { leached } from '../../src/chemistry/leached.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const inputs = (
  mass_g: number,
  extract_mL: number,
  concentration_mg_per_L: number,
  blank_mg_per_L: number
) => exactly({ mass_g, extract_mL, concentration_mg_per_L, blank_mg_per_L })

test.for([
  ['by hand: 100 mL at 1.2 mg/L from 5 g', inputs(5, 100, 1.2, 0), '24'],
  ['by hand: the same less a blank of 0.2 mg/L', inputs(5, 100, 1.2, 0.2), '20'],
  ['by hand: 1 L at 1 mg/L from 1 kg', inputs(1000, 1000, 1, 0), '1']
] as const)('%s', ([, given, printed]) => {
  expect(asPrinted(leached(given).value, printed)).toBe(printed)
})

test('less than the blank is less than none, and no fault', () => {
  expect(leached(inputs(5, 100, 0.1, 0.2)).value).toBeCloseTo(-2, 12)
})

describe('refuses', () => {
  test.for([
    [inputs(0, 100, 1, 0), 'mass_g must be greater than 0, got 0'],
    [inputs(5, 0, 1, 0), 'extract_mL must be greater than 0, got 0'],
    [inputs(5, 100, -1, 0), 'concentration_mg_per_L must be at least 0, got -1'],
    [inputs(5, 100, 1, -1), 'blank_mg_per_L must be at least 0, got -1']
  ] as const)('%o', ([given, message]) => {
    expect(() => leached(given)).toThrow(message)
  })
})

test('k times the sample in k times the water gives the same', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 100, noNaN: true }), k => {
      expect(leached(inputs(5 * k, 100 * k, 1.2, 0.1)).value).toBeCloseTo(22, 9)
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(
    leached,
    uncertain({
      mass_g: [5, 0.01],
      extract_mL: [100, 0.4],
      concentration_mg_per_L: [0.94, 0.05],
      blank_mg_per_L: [0.21, 0.02]
    })
  )
})
