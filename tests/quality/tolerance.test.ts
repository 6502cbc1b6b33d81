/** Tolerance intervals against tables, the handbook, and populations that are known. */

import fc from 'fast-check'
import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import { describe, expect, test } from 'vitest'
import { oneSidedFactor, twoSidedFactor } from '../../src/quality/tolerance-factor.ts'
import {
  distributionFreeInterval,
  fewestFigures,
  type Sides,
  toleranceInterval,
  usualQuestion
} from '../../src/quality/tolerance.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { normalDraws } from './draws.ts'
import { type Row, rowsOf } from './outside.ts'

const factors = rowsOf('tolerance-factors')

const groups = [...new Set(factors.map(row => `${row.p}/${row.confidence}`))]

const missedBy = (rows: readonly Row[], column: string, factorOf: (row: Row) => number) =>
  rows
    .map(row => `n ${row.n}: ${asPrinted(factorOf(row), row[column]!)}`)
    .filter((found, index) => found !== `n ${rows[index]!.n}: ${rows[index]![column]}`)

const questionOf = (row: Row) => ({ coverage: Number(row.p), confidence: Number(row.confidence) })

describe('factors of normal intervals', () => {
  test.for(groups.map(group => [group]))('p/γ %s: every k of the table', ([group]) => {
    const rows = factors.filter(row => `${row.p}/${row.confidence}` === group)
    expect(rows.length).toBeGreaterThanOrEqual(30)
    const one = (row: Row) => oneSidedFactor(Number(row.n), questionOf(row))
    const two = (row: Row) => twoSidedFactor(Number(row.n), questionOf(row))
    expect(missedBy(rows, 'k1_one_sided_exact', one)).toEqual([])
    expect(missedBy(rows, 'k2_two_sided_exact', two)).toEqual([])
  })

  // NIST/SEMATECH e-Handbook, 7.2.6.3: n = 43, 90 % with 99 %. It prints 2.217 (Howe) and 1.8752
  // (Natrella), both approximations; δ = 8.4037 and t' = 12.2883 of its exact one-sided way give 1.8740.
  test('the handbook: exact where it approximates', () => {
    const asked = { coverage: 0.9, confidence: 0.99 }
    expect(asPrinted(oneSidedFactor(43, asked), '1.8740')).toBe('1.8740')
    expect(asPrinted(twoSidedFactor(43, asked), '2.22283')).toBe('2.22283')
    expect(Math.abs(twoSidedFactor(43, asked) / 2.217 - 1)).toBeLessThan(0.003)
  })

  test('with many figures both come near the quantiles of the population', () => {
    expect(oneSidedFactor(200000, { coverage: 0.95, confidence: 0.501 })).toBeCloseTo(1.644854, 4)
    expect(twoSidedFactor(200000, { coverage: 0.95, confidence: 0.501 })).toBeCloseTo(1.959964, 4)
  })

  test('more figures, less coverage, less confidence: each makes k smaller', () => {
    const size = fc.integer({ min: 2, max: 60 })
    const part = fc.double({ min: 0.55, max: 0.98, noNaN: true })
    fc.assert(
      fc.property(size, part, part, (n, coverage, confidence) => {
        for (const factor of [oneSidedFactor, twoSidedFactor]) {
          const k = factor(n, { coverage, confidence })
          expect(factor(n + 5, { coverage, confidence })).toBeLessThan(k)
          expect(factor(n, { coverage: coverage + 0.01, confidence })).toBeGreaterThan(k)
          expect(factor(n, { coverage, confidence: confidence + 0.01 })).toBeGreaterThan(k)
        }
      }),
      { numRuns: 20 }
    )
  })

  test.for([
    [10, 0.5, 0.95],
    [1, 0.95, 0.95],
    [2.5, 0.95, 0.95],
    [10, 1, 0.95],
    [10, 0.95, 0]
  ] as const)('n = %d, p = %d, γ = %d is refused', ([n, coverage, confidence]) => {
    expect(() => oneSidedFactor(n, { coverage, confidence })).toThrow(RangeError)
    expect(() => twoSidedFactor(n, { coverage, confidence })).toThrow(RangeError)
  })
})

/** Part of a standard normal population between two limits. */
const held = ({ lower, upper }: { lower?: number; upper?: number }) =>
  (upper === undefined ? 1 : normalCdf(upper, 0, 1)) -
  (lower === undefined ? 0 : normalCdf(lower, 0, 1))

describe('intervals', () => {
  test('mean and k · s, at the ends asked for', () => {
    const values = [9.8, 10.1, 10.4, 9.9, 10.3]
    const both = toleranceInterval(values)
    // s = 0.254951, k = 5.0769 and 4.2027 of the table above.
    expect(both).toMatchObject({ kind: 'normal', n: 5, coverage: 0.95, confidence: 0.95 })
    expect(both.lower).toBeCloseTo(10.1 - 5.0769 * 0.254951, 4)
    expect(both.upper).toBeCloseTo(10.1 + 5.0769 * 0.254951, 4)
    const least = toleranceInterval(values, { ...usualQuestion, sides: 'lower' })
    expect(least.lower).toBeCloseTo(10.1 - 4.2027 * 0.254951, 4)
    expect(least).not.toHaveProperty('upper')
    expect(toleranceInterval(values, { ...usualQuestion, sides: 'upper' })).not.toHaveProperty(
      'lower'
    )
  })

  test.for(['both', 'lower', 'upper'] as const)(
    'normal samples, %s: 95 of 100 intervals hold 95 %%',
    sides => {
      const question = { ...usualQuestion, sides }
      const samples = normalDraws(2000, 7)
      const good = samples.filter(values => held(toleranceInterval(values, question)) >= 0.95)
      // Three standard deviations of a share of 0.95 in 2000 are 0.015.
      expect(Math.abs(good.length / 2000 - 0.95)).toBeLessThan(0.015)
    }
  )

  test.for([
    [60, 'both'],
    [93, 'both'],
    [130, 'lower'],
    [59, 'upper']
  ] as const)(
    '%d figures of any shape, %s: the confidence stated is that reached',
    ([n, sides]) => {
      const question = { ...usualQuestion, sides }
      // The order of figures is all that counts, so a normal population serves for any.
      const samples = normalDraws(2000, n)
      const found = samples.map(values => distributionFreeInterval(values, question))
      const good = found.filter(one => held(one) >= 0.95).length
      expect(Math.abs(good / 2000 - found[0]!.attained)).toBeLessThan(0.027)
      expect(found[0]!.attained >= 0.95).toBe(n >= fewestFigures(question))
    }
  )
})

describe('distribution-free', () => {
  // ISO 16269-6:2014 and the handbook, 7.2.6.4, by 1 − pⁿ and 1 − n·pⁿ⁻¹ + (n − 1)·pⁿ.
  test.for([
    [0.9, 0.9, 22, 38],
    [0.95, 0.9, 45, 77],
    [0.95, 0.95, 59, 93],
    [0.99, 0.95, 299, 473],
    [0.99, 0.99, 459, 662]
  ] as const)('p = %d, γ = %d: %d figures for one end, %d for both', row => {
    const [coverage, confidence, one, two] = row
    const of = (sides: Sides) => fewestFigures({ coverage, confidence, sides })
    expect([of('lower'), of('upper'), of('both')]).toEqual([one, one, two])
  })

  test('few figures: from the least to the greatest, and how little that is worth', () => {
    const few = distributionFreeInterval([5, 1, 3, 2, 4])
    expect(few).toMatchObject({ kind: 'distribution-free', lower: 1, upper: 5, n: 5 })
    // 1 − 5·0.95⁴ + 4·0.95⁵, worked by hand.
    expect(few.attained).toBeCloseTo(0.0225925, 7)
    // With 95 %: 1 − 5·p⁴ + 4·p⁵ = 0.95 at p = 0.342592, solved by hand.
    expect(few.held).toBeCloseTo(0.342592, 6)
  })

  test('many figures: the outermost are left out as far as the confidence allows', () => {
    const values = Array.from({ length: 130 }, (_, index) => index + 1)
    // Binomial table: P(at most 2 of 130 beyond 5 %) = 0.0377, P(at most 3) = 0.1047.
    const lower = distributionFreeInterval(values, { ...usualQuestion, sides: 'lower' })
    expect(lower.lower).toBe(3)
    const both = distributionFreeInterval(values)
    expect([both.lower, both.upper]).toEqual([1, 129])
  })
})
