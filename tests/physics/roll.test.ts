import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lengthByMass, rollLength } from '../../src/physics/roll.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test('the pieces together, by hand', () => {
  const pieces = exactly({ piece1_m: 0.912, piece2_m: 0.578, piece3_m: 10 })
  expect(rollLength(pieces).value).toBeCloseTo(11.49, 12)
})

// By hand: 1000 · m / (m″ · w).
test.for([
  [31.36, 701, 30.05, '1.489'],
  [1000, 500, 1000, '2.000'],
  [350, 700, 100, '5.000']
] as const)(
  '%f g of %f g/m², %f mm wide: %s m',
  ([mass_g, arealMass_g_per_m2, width_mm, printed]) => {
    const inputs = exactly({ mass_g, arealMass_g_per_m2, width_mm })
    expect(asPrinted(lengthByMass(inputs).value, printed)).toBe(printed)
  }
)

test('a roll of that length has that mass', () => {
  const size = fc.double({ min: 0.1, max: 1000, noNaN: true })
  fc.assert(
    fc.property(size, size, size, (mass_g, arealMass_g_per_m2, width_mm) => {
      const length = lengthByMass(exactly({ mass_g, arealMass_g_per_m2, width_mm })).value
      expect((length * arealMass_g_per_m2 * width_mm) / 1000 / mass_g).toBeCloseTo(1, 9)
    })
  )
})

describe('refuses', () => {
  test('a piece of nothing', () => {
    expect(() => rollLength(exactly({ piece1_m: 1, piece2_m: 0 }))).toThrow(
      'piece2_m must be greater than 0, got 0'
    )
  })

  const fine = { mass_g: 31, arealMass_g_per_m2: 700, width_mm: 30 }
  test.for(Object.keys(fine))('%s of 0', name => {
    expect(() => lengthByMass(exactly({ ...fine, [name]: 0 }))).toThrow(
      `${name} must be greater than 0, got 0`
    )
  })
})

test('trials of the distributions agree', () => {
  expectLinear(
    lengthByMass,
    uncertain({ mass_g: [31.36, 0.1], arealMass_g_per_m2: [701, 3], width_mm: [30.05, 0.17] })
  )
})
