import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { massFractionOf, massFractions } from '../../src/chemistry/hydrometer.ts'
import { doubtOf, type Solute, solutionDensity } from '../../src/chemistry/solutions.ts'
import { exact } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectAgreement, FEWER_DRAWS, simulate } from '../metrology/monte-carlo.ts'

const fractions = (density_g_per_cm3: number, solute: Solute = 'sulfuric acid') =>
  massFractions(solute, exactly({ density_g_per_cm3, temperature_C: 20 })).map(({ value }) => value)

/** Nodes of the table and lines between them, by hand. */
test.for([
  [1.3951, ['50.00']],
  [1.0661, ['10.00']],
  [1.8144, ['90.00']],
  [1.81655, ['90.42']],
  [1.835, ['95.72', '98.58']],
  [1.832, ['94.32', '99.59']]
] as const)('sulfuric acid of %f g/cm³', ([rho, printed]) => {
  expect(fractions(rho).map((w, i) => asPrinted(w, printed[i] ?? '0.00'))).toEqual(printed)
})

test.for([
  ['ammonia', 0.9575, '10.00'],
  ['ammonia', 0.907, '25.00'],
  ['nitric acid', 1.3913, '65.00'],
  ['hydrogen peroxide', 1.1126, '30.00'],
  ['sodium hydroxide', 1.1085, '10.00']
] as const)('%s of %f g/cm³ is %s %', ([solute, rho, printed]) => {
  expect(fractions(rho, solute).map(w => asPrinted(w, printed))).toEqual([printed])
})

describe('where density does not tell', () => {
  const near = (density_g_per_cm3: number) => exactly({ density_g_per_cm3, temperature_C: 20 })

  test('two acids of one density: the side is asked for', () => {
    expect(() => massFractionOf('sulfuric acid', near(1.835))).toThrow(
      'density_g_per_cm3 must be told with its side: both 95.72 % and 98.58 % have it'
    )
    expect(massFractionOf('sulfuric acid', near(1.835), 'weaker').value).toBeCloseTo(95.722, 3)
    expect(massFractionOf('sulfuric acid', near(1.835), 'stronger').value).toBeCloseTo(98.579, 3)
  })

  test('a density only just below that of the pure acid may be the pure acid', () => {
    const just = uncertain({ density_g_per_cm3: [1.8303, 0.0002], temperature_C: [20, 0] })
    expect(massFractions('sulfuric acid', just)).toHaveLength(2)
    expect(() => massFractionOf('sulfuric acid', just)).toThrow('told with its side')
    const below = uncertain({ density_g_per_cm3: [1.8279, 0.0002], temperature_C: [20, 0] })
    expect(massFractionOf('sulfuric acid', below).value).toBeCloseTo(93, 9)
  })

  test('next to the greatest density it tells next to nothing', () => {
    expect(() => fractions(1.836)).toThrow(
      'density_g_per_cm3 must be below 1.8357: nearer to the greatest density it does not tell the strength'
    )
  })

  test('a reading just above the greatest density is noise, and refused as such', () => {
    expect(() => fractions(1.8366)).toThrow('it does not tell the strength')
  })

  test('no solution of that density', () => {
    expect(fractions(1.9)).toEqual([])
    expect(fractions(0.9978)).toEqual([])
    expect(() => massFractionOf('sulfuric acid', near(1.9))).toThrow(
      'density_g_per_cm3 must be a density that sulfuric acid has'
    )
    expect(() => massFractionOf('ammonia', near(1.02))).toThrow('a density that ammonia has')
  })

  test('outside the temperatures of the table', () => {
    const hot = exactly({ density_g_per_cm3: 1.4, temperature_C: 40 })
    expect(() => massFractions('sulfuric acid', hot)).toThrow('temperature_C must be from 15 to 30')
  })
})

test('strength to density and back, at any temperature', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 93, noNaN: true }),
      fc.double({ min: 15, max: 30, noNaN: true }),
      (massFraction_percent, temperature_C) => {
        const { value: density_g_per_cm3 } = solutionDensity(
          'sulfuric acid',
          exactly({ massFraction_percent, temperature_C })
        )
        const inputs = exactly({ density_g_per_cm3, temperature_C })
        expect(massFractionOf('sulfuric acid', inputs).value).toBeCloseTo(massFraction_percent, 7)
      }
    )
  )
})

test('above 94 % one of two strengths is the one it came from', () => {
  const above = fc.oneof(
    fc.double({ min: 94, max: 95.9, noNaN: true }),
    fc.double({ min: 98.5, max: 100, noNaN: true })
  )
  fc.assert(
    fc.property(above, massFraction_percent => {
      const { value } = solutionDensity(
        'sulfuric acid',
        exactly({ massFraction_percent, temperature_C: 20 })
      )
      const found = fractions(value)
      expect(found).toHaveLength(2)
      expect(Math.min(...found.map(w => Math.abs(w - massFraction_percent)))).toBeLessThan(1e-6)
    })
  )
})

test('trials of the distributions agree', () => {
  const inputs = uncertain({ density_g_per_cm3: [1.75221, 0.0011], temperature_C: [22, 0.5] })
  // The table's error is drawn beside the inputs: a table too high reads as a density too low.
  expectAgreement(
    massFractionOf('sulfuric acid', inputs),
    simulate(
      ({ table, density_g_per_cm3: { value }, temperature_C }) =>
        massFractionOf('sulfuric acid', {
          density_g_per_cm3: exact(value - table.value),
          temperature_C
        }),
      { ...inputs, table: doubtOf('sulfuric acid') },
      FEWER_DRAWS
    )
  )
})
