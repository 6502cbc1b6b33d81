/** Scatter between and within lots, and the measurement's part in it. */

import { describe, expect, test } from 'vitest'
import { lotVariance } from '../../src/quality/lot-variance.ts'
import { measurementShare } from '../../src/quality/measurement-share.ts'
import { meanOfValues } from '../../src/quality/sample.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { normalDraws } from './draws.ts'
import { threeLevels } from './handbook.ts'

// NIST/SEMATECH e-Handbook, 7.4.3.3: SST 27.897, SSE 17.452, F = 9.59, p = 0.00325.
test('the handbook’s three levels', () => {
  const { between, within, F, p } = lotVariance(threeLevels)!
  expect([between.df, within.df]).toEqual([2, 12])
  expect(asPrinted(between.sumOfSquares, '27.897')).toBe('27.897')
  expect(asPrinted(within.sumOfSquares, '17.452')).toBe('17.452')
  expect(asPrinted(F, '9.59')).toBe('9.59')
  expect(asPrinted(p, '0.00325')).toBe('0.00325')
})

// NIST StRD, analysis of variance, SiRstv: five instruments, five readings each.
test('NIST StRD, SiRstv to its certified digits', () => {
  const found = lotVariance([
    [196.3052, 196.124, 196.189, 196.2569, 196.3403],
    [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
    [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
    [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
    [196.2119, 196.1051, 196.185, 196.0052, 196.209]
  ])!
  const near = (actual: number, certified: number) =>
    expect(Math.abs(actual / certified - 1)).toBeLessThan(1e-9)
  near(found.F, 1.18046237440255)
  near(found.between.sumOfSquares, 0.0511462616)
  near(found.within.sumOfSquares, 0.21663656)
  near(found.withinSigma, 0.104076068334656)
})

describe('random effects', () => {
  test('equal numbers: (MSB − MSW)/n', () => {
    const found = lotVariance(threeLevels)!
    // From the table above: (13.948667 − 1.454333)/5 = 2.498867.
    expect(found.betweenSigma ** 2).toBeCloseTo(2.498867, 6)
    expect(found.betweenShare).toBeCloseTo(2.498867 / (2.498867 + 1.454333), 6)
  })

  test('unequal numbers: (MSB − MSW)/n₀, n₀ below the mean number', () => {
    // SSB = 106.9 with 2, SSW = 8 with 7, n₀ = (10 − 38/10)/2 = 3.1: 16.87327, worked by hand.
    const found = lotVariance([
      [1, 3],
      [4, 5, 6],
      [9, 9, 10, 11, 11]
    ])!
    expect(found.betweenSigma ** 2).toBeCloseTo(16.87327, 5)
  })

  test('unequal numbers give back the scatter they were drawn with, on the average', () => {
    const sizes = [2, 3, 2, 5, 4, 2, 3, 6, 2, 2, 3, 4]
    const found = normalDraws(1500, 60, 9).map(z => {
      let next = 12
      const lots = sizes.map((size, lot) =>
        Array.from({ length: size }, () => 2 * z[lot]! + 0.7 * z[next++]!)
      )
      return lotVariance(lots)!
    })
    const mean = (of: (one: (typeof found)[number]) => number) => meanOfValues(found.map(of))
    expect(mean(one => one.betweenSigma ** 2)).toBeGreaterThan(4 * 0.95)
    expect(mean(one => one.betweenSigma ** 2)).toBeLessThan(4 * 1.05)
    expect(mean(one => one.withinSigma ** 2)).toBeCloseTo(0.49, 1)
  })

  test('lots more alike than their readings have no scatter of their own', () => {
    const found = lotVariance([
      [1, 3],
      [3, 1],
      [1.1, 2.9]
    ])!
    expect(found).toMatchObject({ betweenSigma: 0, betweenShare: 0 })
  })

  test.for([
    [[[1], [2], [3]], 'one reading a lot'],
    [[[1, 2, 3]], 'one lot'],
    [[[1, 2], []], 'one lot with readings'],
    [
      [
        [1, 1],
        [2, 2]
      ],
      'readings that never differ'
    ]
  ] as const)('%j, %s: no table', ([lots]) => {
    expect(lotVariance(lots)).toBeUndefined()
  })
})

describe('the measurement’s part', () => {
  const figures = [
    { value: 10, u: 0.3 },
    { value: 12, u: 0.3 },
    { value: 14, u: 0.6 }
  ]

  test('mean u² over the variance of the lots', () => {
    // u² = (0.09 + 0.09 + 0.36)/3 = 0.18, s² = 4, worked by hand.
    const found = measurementShare(figures, 12)!
    expect(found.ofScatter).toBeCloseTo(0.045, 12)
    expect(found.lotSigma).toBeCloseTo(Math.sqrt(3.82), 12)
    expect(found.ofTolerance).toBeCloseTo((6 * Math.sqrt(0.18)) / 12, 12)
  })

  test('where u is as large as all the scatter, the measurement may be all of it', () => {
    const found = measurementShare(figures.map(({ value }) => ({ value, u: 5 })))!
    expect(found).toMatchObject({ ofScatter: 1, lotSigma: 0 })
    expect(found).not.toHaveProperty('ofTolerance')
  })

  test('equal figures have no scatter to share', () => {
    expect(measurementShare([figures[0]!, figures[0]!])).toBeUndefined()
  })
})
