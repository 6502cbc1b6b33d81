import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import {
  discFactor,
  foilConductivity,
  fourPointResistance,
  stripResistivity,
  thicknessFactor,
  vanDerPauw
} from '../../src/physics/resistivity.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

/** A foil thin against the spacing, on a sheet without end. */
const sheet = { spacing_mm: 2, thickness_mm: 0.5 }

describe('four points', () => {
  test('π/ln 2 = 4.532360141827194 on a sheet without end', () => {
    const { value } = fourPointResistance(exactly({ voltage_mV: 1, current_mA: 1000, ...sheet }))
    expect(value).toBeCloseTo(4.532360141827194, 13)
  })

  test.for([
    ['0.3127 mV at 100 mA', 0.3127, 100, undefined, '14.172690'],
    ['0.4413 mV at 100 mA: 20.00 mΩ, so 10.00 µΩ·m at 0.5 mm', 0.4413, 100, undefined, '20.00'],
    ['0.3127 mV on a disc of 30 mm, points 1.59 mm apart', 0.3127, 100, 30, '13.836251']
  ] as const)('by hand: %s', ([, voltage_mV, current_mA, diameter_mm, printed]) => {
    const spacing_mm = diameter_mm === undefined ? 2 : 1.59
    const inputs = exactly({ voltage_mV, current_mA, spacing_mm, thickness_mm: 0.4 })
    const { value } = fourPointResistance({
      ...inputs,
      ...(diameter_mm === undefined ? {} : { diameter_mm: exact(diameter_mm) })
    })
    expect(asPrinted(value, printed)).toBe(printed)
  })

  test('a thick foil is corrected: t/s = 0.5, F = 0.9974, by hand', () => {
    const inputs = { voltage_mV: 1, current_mA: 1000, spacing_mm: 2, thickness_mm: 1 }
    const { value } = fourPointResistance(exactly(inputs))
    expect(value).toBeCloseTo(0.9974 * 4.532360141827194, 12)
  })

  // Smits 1958, table II, as recalled; the closed form gives 3.92741 and 4.50797 for the two it misses.
  test.for([
    [3, 2.2662],
    [4, 2.9289],
    [5, 3.3625],
    [7.5, 3.9273],
    [10, 4.1716],
    [15, 4.3646],
    [20, 4.4364],
    [40, 4.5076]
  ] as const)('Smits table II (from memory): d/s = %f gives %f', ([ratio, printed]) => {
    expect(Math.abs(discFactor(ratio) - printed)).toBeLessThan(5e-4)
  })

  test.for([
    [18.868, '4.424769'],
    [25, '4.470445']
  ] as const)('closed form: d/s = %f gives %s', ([ratio, printed]) => {
    expect(Math.abs(discFactor(ratio) - Number(printed))).toBeLessThan(2e-6)
  })

  // Smits 1958, table III, as recalled; recomputed by the method of images to 2 in 10⁴.
  test.for([
    [0, 1],
    [0.3, 1],
    [0.4, 0.9995],
    [0.5, 0.9974],
    [0.5555, 0.9948],
    [0.625, 0.9898],
    [0.7143, 0.9797],
    [0.8333, 0.96],
    [1, 0.9215],
    [1.1111, 0.8907],
    [1.25, 0.8491],
    [1.4286, 0.7938],
    [1.6667, 0.7225],
    [2, 0.6337]
  ] as const)('Smits table III (from memory): t/s = %f gives F = %f', ([ratio, factor]) => {
    expect(thicknessFactor(ratio)).toBeCloseTo(factor, 12)
  })

  test('between two values F is on the line between them', () => {
    expect(thicknessFactor(0.45)).toBeCloseTo((0.9995 + 0.9974) / 2, 12)
    expect(thicknessFactor(0.1)).toBe(1)
  })

  test('the correction is not the form with hyperbolic sines: 0.9721 at 0.4', () => {
    const wrong = Math.LN2 / Math.log(Math.sinh(0.4) / Math.sinh(0.2))
    expect(asPrinted(wrong, '0.9721')).toBe('0.9721')
    expect(thicknessFactor(0.4) - wrong).toBeGreaterThan(0.02)
  })

  test('a disc without end is a sheet without end', () => {
    expect(discFactor(1e6)).toBeCloseTo(Math.PI / Math.LN2, 10)
  })

  test.for([
    [{ voltage_mV: 0 }, 'voltage_mV must be greater than 0, got 0'],
    [{ current_mA: -1 }, 'current_mA must be greater than 0, got -1'],
    [{ spacing_mm: 0 }, 'spacing_mm must be greater than 0, got 0'],
    [{ thickness_mm: 4.1 }, 'thickness_mm must be at most 2 spacings, got 2.05'],
    [{ diameter_mm: 5.9 }, 'diameter_mm must be at least 3 spacings, got 2.95']
  ] as const)('refuses %o', ([odd, message]) => {
    const inputs = { voltage_mV: 1, current_mA: 100, diameter_mm: 50, ...sheet, ...odd }
    expect(() => fourPointResistance(exactly(inputs))).toThrow(message)
  })

  test('trials of the distributions agree', () => {
    expectLinear(
      fourPointResistance,
      uncertain({
        voltage_mV: [0.463, 0.003],
        current_mA: [100, 0.2],
        spacing_mm: [1, 0.004],
        thickness_mm: [0.92, 0.002],
        diameter_mm: [20, 0.05]
      })
    )
  })
})

describe('van der Pauw', () => {
  // Roots of the relation to 13 digits by mpmath.
  test.for([
    [1, 1, 4.532360141827192],
    [1, 2, 6.528502605272994],
    [1, 3, 8.21879147690209],
    [1, 10, 17.431126260476],
    [1.234, 1.567, 6.316359199762],
    [1, 100, 92.434651054429]
  ] as const)('%f and %f mΩ: %f mΩ', ([first_mOhm, second_mOhm, root]) => {
    const { value } = vanDerPauw(exactly({ first_mOhm, second_mOhm }))
    expect(value / root).toBeCloseTo(1, 11)
  })

  test('solves its relation, whichever comes first, and scales', () => {
    const positive = fc.double({ min: 0.1, max: 50, noNaN: true })
    fc.assert(
      fc.property(positive, positive, (first_mOhm, second_mOhm) => {
        const { value } = vanDerPauw(exactly({ first_mOhm, second_mOhm }))
        const sum =
          Math.exp((-Math.PI * first_mOhm) / value) + Math.exp((-Math.PI * second_mOhm) / value)
        expect(sum).toBeCloseTo(1, 10)
        const swapped = vanDerPauw(exactly({ first_mOhm: second_mOhm, second_mOhm: first_mOhm }))
        expect(swapped.value / value).toBeCloseTo(1, 12)
        const doubled = vanDerPauw(
          exactly({ first_mOhm: 2 * first_mOhm, second_mOhm: 2 * second_mOhm })
        )
        expect(doubled.value / value).toBeCloseTo(2, 11)
      })
    )
  })

  test.for([
    [{ first_mOhm: 0, second_mOhm: 1 }, 'first_mOhm must be greater than 0, got 0'],
    [{ first_mOhm: 1, second_mOhm: -1 }, 'second_mOhm must be greater than 0, got -1']
  ] as const)('refuses %o', ([inputs, message]) => {
    expect(() => vanDerPauw(exactly(inputs))).toThrow(message)
  })

  test('trials of the distributions agree', () => {
    expectLinear(vanDerPauw, uncertain({ first_mOhm: [4.6, 0.04], second_mOhm: [4.4, 0.04] }))
  })
})

describe('strip', () => {
  test.for([
    ['by hand: 1.250 mΩ, 10 × 10 mm, 20 mm', 1.25, 10, 10, 20, '6.250'],
    ['by hand: 200 mΩ, 10 × 0.5 mm, 100 mm', 200, 10, 0.5, 100, '10.00']
  ] as const)('%s', ([, resistance_mOhm, width_mm, thickness_mm, length_mm, printed]) => {
    const inputs = exactly({ resistance_mOhm, width_mm, thickness_mm, length_mm })
    expect(asPrinted(stripResistivity(inputs).value, printed)).toBe(printed)
  })

  // Nanomaterials 14 (2024) 1162: 69 and 192 kS/m at 0.70 and 1.75 g/cm³.
  test.for([
    [14.49, '69.0'],
    [5.208, '192.0']
  ] as const)('%f µΩ·m is %s kS/m', ([resistivity_uOhmm, printed]) => {
    const { value } = foilConductivity(exactly({ resistivity_uOhmm }))
    expect(asPrinted(value, printed)).toBe(printed)
  })

  test('a relative uncertainty stays the same in the reciprocal', () => {
    const one = foilConductivity({ resistivity_uOhmm: measured(10, 0.1, 'strip') })
    expect(uncertaintyOf(one) / one.value).toBeCloseTo(0.01, 6)
  })

  test.for([
    [{ resistance_mOhm: 0, width_mm: 1, thickness_mm: 1, length_mm: 1 }, 'resistance_mOhm'],
    [{ resistance_mOhm: 1, width_mm: 0, thickness_mm: 1, length_mm: 1 }, 'width_mm'],
    [{ resistance_mOhm: 1, width_mm: 1, thickness_mm: 0, length_mm: 1 }, 'thickness_mm'],
    [{ resistance_mOhm: 1, width_mm: 1, thickness_mm: 1, length_mm: 0 }, 'length_mm']
  ] as const)('refuses %o', ([inputs, input]) => {
    expect(() => stripResistivity(exactly(inputs))).toThrow(`${input} must be greater than 0`)
  })

  test('refuses the conductivity of a resistivity of nothing', () => {
    expect(() => foilConductivity(exactly({ resistivity_uOhmm: 0 }))).toThrow('greater than 0')
  })

  test('trials of the distributions agree', () => {
    const inputs = {
      resistance_mOhm: [161, 1],
      width_mm: [10, 0.05],
      thickness_mm: [0.5, 0.004],
      length_mm: [80, 0.2]
    } as const
    expectLinear(stripResistivity, uncertain(inputs))
    expectLinear(foilConductivity, uncertain({ resistivity_uOhmm: [10, 0.11] }))
  })
})
