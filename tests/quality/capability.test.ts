/** Capability against the handbook, and its intervals against what they promise. */

import chisquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile'
import { describe, expect, test } from 'vitest'
import { capability, FEW_FIGURES, indices } from '../../src/quality/capability.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { normalDraws } from './draws.ts'
import { flowRates } from './handbook.ts'
import { rowsOf } from './outside.ts'

describe('NIST/SEMATECH e-Handbook, 6.1.6: limits 8 and 20, mean 16, s = 2', () => {
  const found = indices({ n: 50, mean: 16, sigma: 2, df: 49 }, { min: 8, max: 20 })

  test('Cp = 1.0, Cpk = 0.6667', () => {
    expect(asPrinted(found.width!.value, '1.0000')).toBe('1.0000')
    expect(asPrinted(found.nearest.value, '0.6667')).toBe('0.6667')
  })

  // n = 50, by the handbook's formulas: χ² for Cp, normal for Cpk; computed in another language.
  test('Cp from 0.80248 to 1.19713, Cpk from 0.50555 to 0.82778', () => {
    const { width, nearest } = found
    expect([asPrinted(width!.lower, '0.80248'), asPrinted(width!.upper, '1.19713')]).toEqual([
      '0.80248',
      '1.19713'
    ])
    expect([asPrinted(nearest.lower, '0.50555'), asPrinted(nearest.upper, '0.82778')]).toEqual([
      '0.50555',
      '0.82778'
    ])
  })

  test('one limit: Cpl = 1.3333 or Cpu = 0.6667, and no Cp', () => {
    const state = { n: 50, mean: 16, sigma: 2, df: 49 }
    const lower = indices(state, { min: 8 })
    expect(asPrinted(lower.nearest.value, '1.3333')).toBe('1.3333')
    expect(lower).not.toHaveProperty('width')
    expect(asPrinted(indices(state, { max: 20 }).nearest.value, '0.6667')).toBe('0.6667')
  })

  test('a mean outside its limits has an index below 0', () => {
    const state = { n: 50, mean: 22, sigma: 2, df: 49 }
    expect(indices(state, { min: 8, max: 20 }).nearest.value).toBeCloseTo(-1 / 3, 10)
  })

  test('without a limit there is no index', () => {
    expect(() => indices({ n: 5, mean: 1, sigma: 1, df: 4 }, {})).toThrow(RangeError)
  })
})

describe('of figures', () => {
  test('within from moving ranges, overall from s', () => {
    const found = capability(flowRates, { min: 40, max: 60 })!
    // e-Handbook, 6.3.2.2: MR̄/d₂ = 1.66415 with 2/√π, s = 2.03385.
    expect(asPrinted(found.within.width!.value, '2.0030')).toBe(
      asPrinted(20 / 6 / 1.66415, '2.0030')
    )
    expect(asPrinted(found.overall.nearest.value, '1.5062')).toBe(
      asPrinted((60 - 50.81) / 3 / 2.03385, '1.5062')
    )
    expect(found).toMatchObject({ n: 10, isFew: true, confidence: 0.95 })
  })

  test('few is below 50, and equal figures have no index', () => {
    const enough = Array.from({ length: FEW_FIGURES }, (_, index) => index % 7)
    expect(capability(enough, { max: 9 })!.isFew).toBe(false)
    expect(capability(enough.slice(1), { max: 9 })!.isFew).toBe(true)
    expect(capability([3, 3, 3], { max: 9 })).toBeUndefined()
  })

  test.for(['within', 'overall'] as const)(
    '%s: 95 of 100 intervals hold the true Cp and Cpk',
    part => {
      const tolerance = { min: -4, max: 3 }
      const found = normalDraws(3000, 40).map(values => capability(values, tolerance)![part])
      const holds = (index: { lower: number; upper: number }, value: number) =>
        index.lower <= value && value <= index.upper
      const share = (good: readonly unknown[]) => good.length / found.length
      expect(share(found.filter(({ width }) => holds(width!, 7 / 6)))).toBeCloseTo(0.95, 1)
      expect(share(found.filter(({ width }) => holds(width!, 7 / 6)))).toBeGreaterThan(0.935)
      expect(share(found.filter(({ nearest }) => holds(nearest, 1)))).toBeGreaterThan(0.93)
      expect(share(found.filter(({ nearest }) => holds(nearest, 1)))).toBeLessThan(0.97)
    }
  )
})

// Quantiles of χ², 12 digits.
test.for(rowsOf('chi2-quantiles').map(row => [row.df!, row] as const))(
  'χ², ν = %s',
  ([df, row]) => {
    for (const [column, printed] of Object.entries(row).slice(1)) {
      const ours = chisquareQuantile(Number(column.slice(1)), Number(df))
      expect(Math.abs(ours / Number(printed) - 1)).toBeLessThan(1e-11)
    }
  }
)
