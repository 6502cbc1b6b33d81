import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  acidEquivalent,
  asBariumSulfate,
  sulfurExplained
} from '../../src/chemistry/barium-sulfate.ts'
import { lossCeiling } from '../../src/chemistry/mass-yield.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

describe('gravimetric factors, as analytical handbooks print them (from memory, not checked)', () => {
  test.for([
    ['S', '0.1374'],
    ['SO4', '0.4116']
  ] as const)('%s over BaSO4 is %s', ([species, printed]) => {
    const one = exactly({ mass_g: 100, precipitate_g: 1, blank_g: 0 })
    expect(asPrinted(asBariumSulfate(one, species).value, printed)).toBe(printed)
  })

  test('H2SO4 over S is 3.059', () => {
    expect(asPrinted(acidEquivalent(exactly({ sulfur_percent: 1 })).value, '3.059')).toBe('3.059')
  })
})

test.for([
  ['by hand: 0.1370 g from 1.000 g', 1, 0.137, 0, 'S', '1.882'],
  ['by hand: the same less a blank of 0.0004 g', 1, 0.1374, 0.0004, 'S', '1.882'],
  ['by hand: 0.0312 g less 0.0002 g from 10 g', 10, 0.0312, 0.0002, 'SO4', '0.1276']
] as const)('%s', ([, mass_g, precipitate_g, blank_g, species, printed]) => {
  const { value } = asBariumSulfate(exactly({ mass_g, precipitate_g, blank_g }), species)
  expect(asPrinted(value, printed)).toBe(printed)
})

test('a published flake of 1.85 % S (Ind. Eng. Chem. Res., acs.iecr.6b04860) holds 5.66 % as H2SO4', () => {
  const { value } = acidEquivalent(exactly({ sulfur_percent: 1.85 }))
  expect(asPrinted(value, '5.66')).toBe('5.66')
})

describe('what the uptake explains', () => {
  test('by hand: 5.66 % of acid, 0.5 % of moisture, ceiling 15.54 %: 36.6 %', () => {
    const { value } = sulfurExplained(
      exactly({ acidEquivalent_percent: 5.66, moisture_percent: 0.5, lossCeiling_percent: 15.54 })
    )
    expect(asPrinted(value, '36.6')).toBe('36.6')
  })

  test('product that took up acid and nothing else is explained whole', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 60, noNaN: true }), uptake_percent => {
        const { value: ceiling } = lossCeiling(exactly({ uptake_percent }))
        const { value } = sulfurExplained(
          exactly({
            acidEquivalent_percent: (100 * uptake_percent) / (100 + uptake_percent),
            moisture_percent: 0,
            lossCeiling_percent: ceiling
          })
        )
        expect(value).toBeCloseTo(100, 9)
      })
    )
  })
})

test('less precipitate than the blank is less than none, and no fault', () => {
  const { value } = asBariumSulfate(
    exactly({ mass_g: 1, precipitate_g: 0.0002, blank_g: 0.0004 }),
    'S'
  )
  expect(value).toBeLessThan(0)
})

test.for([
  [{ mass_g: 0, precipitate_g: 0.1, blank_g: 0 }, 'mass_g must be greater than 0, got 0'],
  [{ mass_g: 1, precipitate_g: -0.1, blank_g: 0 }, 'precipitate_g must be at least 0, got -0.1'],
  [{ mass_g: 1, precipitate_g: 0.1, blank_g: -1 }, 'blank_g must be at least 0, got -1'],
  [{ mass_g: NaN, precipitate_g: 0.1, blank_g: 0 }, 'mass_g must be greater than 0, got NaN']
] as const)('refuses %o', ([inputs, message]) => {
  expect(() => asBariumSulfate(exactly(inputs), 'S')).toThrow(message)
})

test('refuses to explain an uptake of nothing', () => {
  const inputs = { acidEquivalent_percent: 5, moisture_percent: 0, lossCeiling_percent: 0 }
  expect(() => sulfurExplained(exactly(inputs))).toThrow(
    'lossCeiling_percent must be greater than 0'
  )
})

describe('trials of the distributions agree', () => {
  test('sulfur', () => {
    expectLinear(
      inputs => asBariumSulfate(inputs, 'S'),
      uncertain({
        mass_g: [0.5, 0.0004],
        precipitate_g: [0.095, 0.0004],
        blank_g: [0.003, 0.0003]
      })
    )
  })

  test('explained uptake', () => {
    expectLinear(
      sulfurExplained,
      uncertain({
        acidEquivalent_percent: [8, 0.2],
        moisture_percent: [0.5, 0.1],
        lossCeiling_percent: [18.5, 0.1]
      })
    )
  })
})
