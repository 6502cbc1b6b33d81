/** Mean, standard deviation and autocorrelation against certified values. */

import { describe, expect, test } from 'vitest'
import { lagOneAutocorrelation, sampleOf } from '../../src/quality/sample.ts'
import { rowsOf } from './outside.ts'

const dataOf = (name: string) =>
  rowsOf('strd-data')
    .filter(row => row.dataset === name)
    .map(row => Number(row.value))

/** NumAcc2 to 4: base + 0.2, then base + 0.1 and base + 0.3 by turns, 1001 figures. */
const alternating = (base: number) =>
  Array.from({ length: 1001 }, (_, index) => base + (index === 0 ? 0.2 : index % 2 ? 0.1 : 0.3))

const made: Readonly<Record<string, readonly number[]>> = {
  NumAcc1: [10000001, 10000003, 10000002],
  NumAcc2: alternating(1),
  NumAcc3: alternating(1e6),
  NumAcc4: alternating(1e7)
}

/** Digits of s that doubles can give: 0.1 beside 10⁷ is itself known to 10⁻⁸ only. */
const digits: Readonly<Record<string, number>> = { NumAcc3: 9, NumAcc4: 8 }

const near = (actual: number, certified: number, places: number) =>
  expect(Math.abs(actual - certified)).toBeLessThanOrEqual(Math.abs(certified) * 10 ** -places)

describe('NIST StRD, univariate', () => {
  test.for(rowsOf('strd-certified').map(row => [row.dataset!, row] as const))(
    '%s to its certified digits',
    ([name, row]) => {
      const values = made[name] ?? dataOf(name)
      const { n, mean, s } = sampleOf(values)
      expect(n).toBe(Number(row.n))
      near(mean, Number(row.mean), 14)
      near(s, Number(row.sd), digits[name] ?? 12)
      near(lagOneAutocorrelation(values), Number(row.lag1_autocorrelation), digits[name] ?? 12)
    }
  )
})

describe('what has no scatter', () => {
  test('one figure is no sample', () => {
    expect(() => sampleOf([1])).toThrow('a sample requires at least 2 figures')
  })

  test('equal figures hang on nothing', () => {
    expect(lagOneAutocorrelation([3, 3, 3])).toBe(0)
  })
})
