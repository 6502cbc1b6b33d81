import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { uncertaintyOf } from '../../src/metrology/estimate.ts'
import { forcePerWidth, tensileStrength } from '../../src/physics/tensile.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['by hand: 62.5 N on 25 mm × 0.5 mm', 62.5, 25, 0.5, '5.0', '2.5'],
  ['by hand: 66.4/(25.02 · 0.503)', 66.4, 25.02, 0.503, '5.2761', '2.6539'],
  ['by hand: 1 kN on 10 mm × 10 mm is 10 MPa', 1000, 10, 10, '10', '100']
] as const)('%s', ([, force_N, width_mm, thickness_mm, strength, force]) => {
  const inputs = exactly({ force_N, width_mm, thickness_mm })
  expect(asPrinted(tensileStrength(inputs).value, strength)).toBe(strength)
  expect(asPrinted(forcePerWidth(inputs).value, force)).toBe(force)
})

test('the thickness is in the strength and not in the force per width', () => {
  const thin = uncertain({ force_N: [60, 0], width_mm: [25, 0], thickness_mm: [0.5, 0.01] })
  expect(uncertaintyOf(tensileStrength(thin))).toBeCloseTo((60 / 25 / 0.5) * 0.02, 5)
  expect(forcePerWidth(thin).inputs.map(({ input }) => input)).toEqual(['force_N', 'width_mm'])
  expect(uncertaintyOf(forcePerWidth(thin))).toBe(0)
})

describe('refuses', () => {
  test.for([
    [{ force_N: 0, width_mm: 25, thickness_mm: 0.5 }, 'force_N must be greater than 0, got 0'],
    [{ force_N: 60, width_mm: 0, thickness_mm: 0.5 }, 'width_mm must be greater than 0, got 0'],
    [
      { force_N: 60, width_mm: 25, thickness_mm: -1 },
      'thickness_mm must be greater than 0, got -1'
    ],
    [{ force_N: NaN, width_mm: 25, thickness_mm: 1 }, 'force_N must be greater than 0, got NaN']
  ] as const)('%o', ([inputs, message]) => {
    expect(() => tensileStrength(exactly(inputs))).toThrow(message)
  })

  test('a strip without width has no force per width', () => {
    expect(() => forcePerWidth(exactly({ force_N: 60, width_mm: 0 }))).toThrow('width_mm must be')
  })
})

test('strength times thickness is the force per width', () => {
  const positive = fc.double({ min: 1e-2, max: 1e3, noNaN: true })
  fc.assert(
    fc.property(positive, positive, positive, (force_N, width_mm, thickness_mm) => {
      const inputs = exactly({ force_N, width_mm, thickness_mm })
      const product = tensileStrength(inputs).value * thickness_mm
      expect(product / forcePerWidth(inputs).value).toBeCloseTo(1, 12)
    })
  )
})

test('trials of the distributions agree', () => {
  const inputs = uncertain({ force_N: [65, 1.5], width_mm: [25, 0.05], thickness_mm: [0.5, 0.002] })
  expectLinear(tensileStrength, inputs)
  expectLinear(forcePerWidth, uncertain({ force_N: [65, 0.3], width_mm: [25, 0.05] }))
})
