import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { exact, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { crystalDensity_g_per_cm3, porosity } from '../../src/physics/porosity.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import {
  DRAWS,
  expectAgreement,
  normalSource,
  randomSource,
  summarise
} from '../metrology/monte-carlo.ts'
import { covariance } from '../metrology/correlation.ts'

const of = (foilDensity_g_per_cm3: number) => porosity(exactly({ foilDensity_g_per_cm3 }))

test.for([
  [0.7, '69.0'],
  [1.0, '55.8'],
  [1.1, '51.3'],
  [1.75, '22.6'],
  [2.26, '0.0']
] as const)('definition of porosity, by hand: %f g/cm³ of 2.26', ([density, printed]) => {
  expect(asPrinted(of(density).value, printed)).toBe(printed)
})

describe('the density of the crystal', () => {
  /** Density of a cell of four atoms, from the lattice constants a and c in Å. */
  const fromLattice = (a: number, c: number): number => {
    const cell_cm3 = (Math.sqrt(3) / 2) * a * a * c * 1e-24
    return (4 * 12.011) / (6.02214076e23 * cell_cm3)
  }

  test.for([
    ['handbook lattice constants (from memory)', 2.464, 6.711, '2.261'],
    ['published X-ray values', 2.4617, 6.7106, '2.265'],
    ['published X-ray values', 2.4612, 6.7079, '2.267']
  ] as const)('%s: a %f, c %f Å', ([, a, c, printed]) => {
    const density = fromLattice(a, c)
    expect(asPrinted(density, printed)).toBe(printed)
    // √3 u is the half width of the limits.
    const half = Math.sqrt(3) * uncertaintyOf(crystalDensity_g_per_cm3)
    expect(Math.abs(density - crystalDensity_g_per_cm3.value)).toBeLessThan(half + 0.0005)
  })

  test('its uncertainty, ±0.007 evenly likely, is a cause of its own in every porosity', () => {
    const result = of(1)
    expect([...result.terms.keys()]).toEqual(['crystal density of graphite'])
    // 100 · ρ/ρc² · u = 100 · 1/2.26² · 0.0040415
    expect(asPrinted(uncertaintyOf(result), '0.07913')).toBe('0.07913')
  })

  test('two porosities are correlated through it', () => {
    expect(covariance(of(1), of(1.2))).toBeCloseTo(
      uncertaintyOf(of(1)) * uncertaintyOf(of(1.2)),
      12
    )
  })
})

test.for([
  [0, 'foilDensity_g_per_cm3 must be greater than 0, got 0'],
  [2.28, 'foilDensity_g_per_cm3 must be at most crystal density (2.26 g/cm³), got 2.28'],
  [1010, 'foilDensity_g_per_cm3 must be at most crystal density (2.26 g/cm³), got 1010']
] as const)('outside the domain: %f g/cm³', ([density, message]) => {
  expect(() => of(density)).toThrow(message)
})

test('porosity and the filled part make 100 %; denser foil is less porous', () => {
  const density = fc.integer({ min: 1, max: 226 }).map(hundredths => hundredths / 100)
  fc.assert(
    fc.property(density, density, (a, b) => {
      expect(of(a).value + (100 * a) / 2.26).toBeCloseTo(100, 10)
      expect(Math.sign(of(a).value - of(b).value)).toBe(Math.sign(b - a))
    })
  )
})

test('trials agree, the crystal density drawn evenly between its limits', () => {
  const uniform = randomSource()
  const normal = normalSource(uniform)
  const trial = () => {
    const density = 1.05 + 0.005 * normal()
    const crystal = 2.26 + 0.007 * (2 * uniform() - 1)
    return 100 * (1 - density / crystal)
  }
  const computed = porosity(uncertain({ foilDensity_g_per_cm3: [1.05, 0.005] }))
  expectAgreement(computed, summarise(Float64Array.from({ length: DRAWS }, trial)))
})

test('the foil density keeps its own causes', () => {
  const result = porosity({ foilDensity_g_per_cm3: measured(1.13, 0.01, 'gauge') })
  expect(result.terms.get('gauge')!.u).toBeCloseTo(-100 / 2.26 / 100, 9)
  expect(porosity({ foilDensity_g_per_cm3: exact(1.13) }).value).toBe(result.value)
})
