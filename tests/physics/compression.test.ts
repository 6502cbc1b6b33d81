import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  compressibility,
  recovery,
  resiliency,
  resiliencyFrom
} from '../../src/physics/compression.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['definitions of ASTM F36, by hand', 1, 0.58, 0.642, '42.0', '14.8', '10.7'],
  ['definitions of ASTM F36, by hand', 0.5, 0.3, 0.35, '40', '25', '16.67'],
  ['a piece that springs back whole', 1, 0.5, 1, '50', '100', '100'],
  ['a piece that does not spring back', 1, 0.5, 0.5, '50', '0', '0']
] as const)('%s: %f, %f, %f mm', ([, preload_mm, loaded_mm, recovered_mm, c, r, s]) => {
  const inputs = exactly({ preload_mm, loaded_mm, recovered_mm })
  expect(asPrinted(compressibility(inputs).value, c)).toBe(c)
  expect(asPrinted(recovery(inputs).value, r)).toBe(r)
  expect(asPrinted(resiliency(inputs).value, s)).toBe(s)
})

describe('S = C · R / (100 − C)', () => {
  // Nanomaterials 14 (2024) 540 prints 10 and 6, each from rounded figures.
  test.for([
    [65, 5, '9.3', 10],
    [9, 60, '5.9', 6]
  ] as const)('C %i %%, R %i %%: %s %%, published as %i', ([c, r, printed, published]) => {
    const value = resiliencyFrom(c, r)
    expect(asPrinted(value, printed)).toBe(printed)
    expect(Math.abs(value - published)).toBeLessThan(0.8)
  })

  test('holds for any piece', () => {
    const part = fc.double({ min: 0.01, max: 0.99, noNaN: true })
    fc.assert(
      fc.property(part, part, (loaded_mm, back) => {
        const recovered_mm = loaded_mm + back * (1 - loaded_mm)
        const inputs = exactly({ preload_mm: 1, loaded_mm, recovered_mm })
        const from = resiliencyFrom(compressibility(inputs).value, recovery(inputs).value)
        expect(from / resiliency(inputs).value).toBeCloseTo(1, 9)
      })
    )
  })

  test.for([100, -1, NaN])('refuses a compressibility of %f %%', c => {
    expect(() => resiliencyFrom(c, 5)).toThrow('compressibility_percent must be at least 0')
  })
})

describe('refuses', () => {
  test.for([
    [[1, 0, 0.5], 'loaded_mm must be greater than 0, got 0'],
    [[1, 0.6, 0.5], 'loaded_mm must be at most recovered (0.5 mm), got 0.6'],
    [[1, 0.5, 1.2], 'recovered_mm must be at most preload (1 mm), got 1.2'],
    [[0.5, 0.5, 0.5], 'preload_mm must be greater than loaded (0.5), got 0.5']
  ] as const)('%o', ([[preload_mm, loaded_mm, recovered_mm], message]) => {
    const inputs = exactly({ preload_mm, loaded_mm, recovered_mm })
    for (const model of [compressibility, recovery, resiliency])
      expect(() => model(inputs)).toThrow(message)
  })
})

describe('trials of the distributions agree', () => {
  const inputs = (u: number) =>
    uncertain({ preload_mm: [0.5, u], loaded_mm: [0.29, u], recovered_mm: [0.325, u] })

  test('compressibility', () => expectLinear(compressibility, inputs(0.0005)))
  test('recovery', () => expectLinear(recovery, inputs(0.0002)))
  test('resiliency', () => expectLinear(resiliency, inputs(0.0003)))
})
