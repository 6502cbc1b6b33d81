import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { expand } from '../../src/metrology/coverage.ts'
import {
  budgetOf,
  degreesOfFreedom,
  estimate,
  exact,
  measured,
  uncertaintyOf
} from '../../src/metrology/estimate.ts'
import { meanOf, meanOfReadings, standardDeviation } from '../../src/metrology/readings.ts'
import { asPrinted } from './as-printed.ts'
import { correlation } from './correlation.ts'

/** Numerical accuracy sets 2 to 4: base + 0.2, then 500 times base + 0.1, base + 0.3. */
const accuracySet = (base: number): number[] => [
  base + 0.2,
  ...Array.from({ length: 1000 }, (_, index) => base + (index % 2 === 0 ? 0.1 : 0.3))
]

describe('NIST statistical reference datasets: certified mean and standard deviation', () => {
  // The data themselves are rounded to floats, which leaves 14, 9.4 and 8.2 digits of s.
  test.for([
    ['NumAcc1', [10_000_001, 10_000_003, 10_000_002], 10_000_002, 1, 1e-15],
    ['NumAcc2', accuracySet(1), 1.2, 0.1, 1e-13],
    ['NumAcc3', accuracySet(1_000_000), 1_000_000.2, 0.1, 1e-9],
    ['NumAcc4', accuracySet(10_000_000), 10_000_000.2, 0.1, 1e-8]
  ] as const)('%s', ([, values, mean, s, within]) => {
    expect(Math.abs(standardDeviation(values)! / s - 1)).toBeLessThan(within)
    expect(Math.abs(meanOf(values.map(exact)).value / mean - 1)).toBeLessThan(1e-13)
  })
})

test('by hand: 1, 2, 3, 4 have s = √(5/3); fewer than two readings have none', () => {
  expect(standardDeviation([1, 2, 3, 4])).toBeCloseTo(Math.sqrt(5 / 3), 15)
  expect(standardDeviation([1])).toBeUndefined()
  expect(standardDeviation([])).toBeUndefined()
})

describe('mean of readings', () => {
  test('GUM 4.2.3: u of the mean is s/√n with n − 1 degrees of freedom', () => {
    const mean = meanOfReadings([9, 10, 11, 14].map(exact), 'x')
    expect(mean.value).toBe(11)
    expect(uncertaintyOf(mean)).toBeCloseTo(standardDeviation([9, 10, 11, 14])! / 2, 12)
    expect(budgetOf(mean)).toEqual([
      {
        pool: 'x, scatter of 4 readings',
        kind: 'A',
        df: 3,
        u: expect.closeTo(1.0801, 4),
        share: 1
      }
    ])
    expect(expand(mean).df).toBe(3)
  })

  test('a calibration common to all readings is not divided by √n, each one’s own error is', () => {
    const cause = (name: string) => ({ name, pool: name, kind: 'B', df: Infinity }) as const
    const readings = [1, 2, 3, 4].map(index =>
      estimate(100, [
        { cause: cause('BAL-1 calibration'), u: 0.3 },
        { cause: cause(`resolution ${index}`), u: 0.2 }
      ])
    )
    const mean = meanOf(readings)
    expect(mean.terms.get('BAL-1 calibration')!.u).toBeCloseTo(0.3, 12)
    expect(mean.terms.get('resolution 1')!.u).toBeCloseTo(0.05, 12)
    expect(uncertaintyOf(mean)).toBeCloseTo(Math.hypot(0.3, 0.2 / 2), 12)
  })

  test('one reading has no scatter of its own and keeps its causes', () => {
    const mean = meanOfReadings([measured(5, 0.1, 'a')], 'x')
    expect([...mean.terms.keys()]).toEqual(['a'])
    expect(mean.value).toBe(5)
  })

  test('without a reading there is no mean', () => {
    expect(() => meanOfReadings([], 'x')).toThrow('a mean requires at least 1 estimate')
    expect(() => meanOf([])).toThrow(RangeError)
  })

  test('a known repeatability replaces the scatter: s/√n with its own degrees of freedom', () => {
    const repeatability = { s: 0.4, df: 24, name: 'TM-01 repeatability' }
    const mean = meanOfReadings([10, 12].map(exact), 'x', repeatability)
    expect(uncertaintyOf(mean)).toBeCloseTo(0.4 / Math.SQRT2, 12)
    expect(asPrinted(degreesOfFreedom(mean), '24.000')).toBe('24.000')
    expect(uncertaintyOf(meanOfReadings([exact(3)], 'y', repeatability))).toBeCloseTo(0.4, 12)
  })

  test('quantities read together stay correlated as their readings are', () => {
    const read = (values: number[], name: string) => meanOfReadings(values.map(exact), name)
    expect(correlation(read([1, 2, 3], 'set'), read([2, 4, 6], 'set'))).toBeCloseTo(1, 12)
    expect(correlation(read([1, 2, 3], 'set'), read([3, 2, 1], 'set'))).toBeCloseTo(-1, 12)
    expect(correlation(read([1, 2, 3], 'set'), read([1, 2, 3], 'other'))).toBe(0)
  })
})

const value = fc.integer({ min: -100_000, max: 100_000 }).map(thousandths => thousandths / 1000)
const values = fc.array(value, { minLength: 2, maxLength: 12 })

test('the order of the readings changes neither mean nor uncertainty', () => {
  fc.assert(
    fc.property(values, readings => {
      const mean = meanOfReadings(readings.map(exact), 'x')
      const turned = meanOfReadings([...readings].reverse().map(exact), 'x')
      expect(turned.value).toBeCloseTo(mean.value, 9)
      expect(uncertaintyOf(turned)).toBeCloseTo(uncertaintyOf(mean), 9)
      expect(standardDeviation([...readings].reverse())!).toBeCloseTo(
        standardDeviation(readings)!,
        9
      )
    })
  )
})

test('a unit a thousand times smaller multiplies both by a thousand, a shift leaves s', () => {
  fc.assert(
    fc.property(values, value, (readings, shift) => {
      const mean = meanOfReadings(readings.map(exact), 'x')
      const scaled = meanOfReadings(
        readings.map(reading => exact(1000 * reading)),
        'x'
      )
      expect(scaled.value / 1000).toBeCloseTo(mean.value, 9)
      expect(uncertaintyOf(scaled) / 1000).toBeCloseTo(uncertaintyOf(mean), 9)
      const moved = readings.map(reading => reading + shift)
      expect(standardDeviation(moved)!).toBeCloseTo(standardDeviation(readings)!, 8)
    })
  )
})

test('u of the mean is the standard deviation over √n', () => {
  fc.assert(
    fc.property(values, readings => {
      const mean = meanOfReadings(readings.map(exact), 'x')
      const expected = standardDeviation(readings)! / Math.sqrt(readings.length)
      expect(uncertaintyOf(mean)).toBeCloseTo(expected, 9)
    })
  )
})
