import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { charCeiling, charEfficiency, charRatio } from '../../src/physics/char.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

/** By hand: 250 mL/g of 67.5 g/m² fill a square metre 16.9 mm high. */
test.for([
  [250, 67.5, '16.9'],
  [425, 50, '21.2'],
  [210.4, 119.8, '25.21']
] as const)(
  'by hand: %s mL/g, %s g/m²',
  ([expansionVolume_mL_per_g, activeMass_g_per_m2, printed]) => {
    const inputs = exactly({ expansionVolume_mL_per_g, activeMass_g_per_m2 })
    expect(asPrinted(charCeiling(inputs).value, printed)).toBe(printed)
  }
)

/** By hand: 12.5 mm of char from 0.5 mm of film, under a ceiling of 16.875 mm. */
test.for([
  [12.5, 0.5, 16.875, '25.0', '71'],
  [16.04, 0.6236, 25.2, '25.72', '61.2'],
  [30, 1, 25, '30', '116']
] as const)(
  'by hand: %s mm from %s mm under %s mm',
  ([charHeight_mm, dryFilm_mm, charCeiling_mm, ratio, efficiency]) => {
    const char = exactly({ charHeight_mm, dryFilm_mm, charCeiling_mm })
    expect(asPrinted(charRatio(char).value, ratio)).toBe(ratio)
    expect(asPrinted(charEfficiency(char).value, efficiency)).toBe(efficiency)
  }
)

const some = fc.double({ min: 0.1, max: 100, noNaN: true })

describe('a char', () => {
  test('that fills its ceiling above the film is wholly efficient, whatever the film', () => {
    fc.assert(
      fc.property(some, some, (dryFilm_mm, charCeiling_mm) => {
        const charHeight_mm = dryFilm_mm + charCeiling_mm
        const found = charEfficiency(exactly({ charHeight_mm, dryFilm_mm, charCeiling_mm }))
        expect(found.value).toBeCloseTo(100, 6)
      })
    )
  })

  test('twice as high has twice the ratio; twice the flake has twice the ceiling', () => {
    fc.assert(
      fc.property(some, some, (a, b) => {
        const ratio = (h: number) => charRatio(exactly({ charHeight_mm: h, dryFilm_mm: b })).value
        expect(ratio(2 * a) / ratio(a)).toBeCloseTo(2, 9)
        const ceiling = (EV: number, m: number) =>
          charCeiling(exactly({ expansionVolume_mL_per_g: EV, activeMass_g_per_m2: m })).value
        expect(ceiling(a, 2 * b) / ceiling(a, b)).toBeCloseTo(2, 9)
        expect(ceiling(a, b)).toBeCloseTo(ceiling(b, a), 9)
      })
    )
  })
})

const char = { charHeight_mm: 12, dryFilm_mm: 0.5, charCeiling_mm: 17 }

test.for([
  [{ ...char, charHeight_mm: 0.5 }, 'charHeight_mm must be greater than the dry film (0.5), got'],
  [{ ...char, charHeight_mm: 0 }, 'charHeight_mm must be greater than 0'],
  [{ ...char, dryFilm_mm: 0 }, 'dryFilm_mm must be greater than 0'],
  [{ ...char, charCeiling_mm: 0 }, 'charCeiling_mm must be greater than 0']
] as const)('refuses %o', ([inputs, message]) => {
  expect(() => charEfficiency(exactly(inputs))).toThrow(message)
})

test('refuses a ratio over no film, and a ceiling of nothing', () => {
  expect(() => charRatio(exactly({ charHeight_mm: 1, dryFilm_mm: 0 }))).toThrow('dryFilm_mm')
  expect(() => charRatio(exactly({ charHeight_mm: 0, dryFilm_mm: 1 }))).toThrow('charHeight_mm')
  const ceiling = (EV: number, m: number) => () =>
    charCeiling(exactly({ expansionVolume_mL_per_g: EV, activeMass_g_per_m2: m }))
  expect(ceiling(0, 1)).toThrow('expansionVolume_mL_per_g must be')
  expect(ceiling(1, 0)).toThrow('activeMass_g_per_m2 must be')
})

test('trials of the distributions agree', () => {
  expectLinear(charRatio, uncertain({ charHeight_mm: [12.5, 0.6], dryFilm_mm: [0.5, 0.002] }))
  expectLinear(
    charCeiling,
    uncertain({ expansionVolume_mL_per_g: [210, 2], activeMass_g_per_m2: [67.5, 0.7] })
  )
  expectLinear(
    charEfficiency,
    uncertain({ charHeight_mm: [12.5, 0.25], dryFilm_mm: [0.5, 0.01], charCeiling_mm: [16.9, 0.1] })
  )
})
