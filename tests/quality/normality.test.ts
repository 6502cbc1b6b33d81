/** Anderson–Darling against another program and against its own promise. */

import { expect, test } from 'vitest'
import { andersonDarling } from '../../src/quality/normality.ts'
import { normalDraws } from './draws.ts'
import { averaged, flowRates, isotopes, rosner } from './handbook.ts'
import { rowsOf } from './outside.ts'

const strd = (name: string) =>
  rowsOf('strd-data')
    .filter(row => row.dataset === name)
    .map(row => Number(row.value))

// A² by scipy 1.17.1, stats.anderson.
test.for([
  ['rosner', rosner, 1.7356891628434283],
  ['flow rates', flowRates, 0.3048580492709476],
  ['averaged', averaged, 0.3505387376108011],
  ['isotopes', isotopes, 2.031697371606006],
  ['Lew', strd('Lew'), 6.000646915775917],
  ['Lottery', strd('Lottery'), 2.5737264714508115],
  ['Mavro', strd('Mavro'), 1.6684654846545612],
  ['Michelso', strd('Michelso'), 0.46076385565194755]
] as const)('A² of %s', ([, values, statistic]) => {
  expect(Math.abs(andersonDarling(values)!.statistic / statistic - 1)).toBeLessThan(1e-10)
})

const found = normalDraws(6000, 20, 5).map(values => andersonDarling(values)!)

// M. A. Stephens in D'Agostino and Stephens (1986), table 4.7: critical values of A² corrected, from
// memory, not checked against the print.
test.for([
  [0.631, 0.1],
  [0.752, 0.05],
  [0.873, 0.025],
  [1.035, 0.01]
] as const)('A² corrected of %d: p = %d', ([critical, p]) => {
  // Among normal samples those beyond the critical value are p of all, and are said to be.
  const beyond = found.filter(({ corrected }) => corrected > critical)
  expect(Math.abs(beyond.length / 6000 - p)).toBeLessThan(4 * Math.sqrt(p / 6000))
  const nearest = found.reduce((best, one) =>
    Math.abs(one.corrected - critical) < Math.abs(best.corrected - critical) ? one : best
  )
  expect(Math.abs(nearest.p / p - 1)).toBeLessThan(0.05)
})

// A² corrected = 1.7611, so p = exp(1.2937 − 5.709·1.7611 + 0.0186·1.7611²) = 1.661·10⁻⁴, worked by hand.
test('far from normal, p is that of the last piece', () => {
  expect(Math.abs(andersonDarling(rosner)!.p / 1.661e-4 - 1)).toBeLessThan(1e-3)
})

test('of normal samples every p is as frequent as another', () => {
  const ps = normalDraws(4000, 15).map(values => andersonDarling(values)!.p)
  for (const part of [0.1, 0.25, 0.5, 0.75, 0.9])
    expect(Math.abs(ps.filter(p => p < part).length / 4000 - part)).toBeLessThan(0.03)
})

test('level and unit do not matter, a figure far out does', () => {
  const moved = andersonDarling(rosner.map(value => 40 - 3 * value))!
  expect(moved.statistic).toBeCloseTo(andersonDarling(rosner)!.statistic, 9)
  const far = andersonDarling([...flowRates, 5000])!
  expect(far.p).toBeLessThan(1e-8)
  expect(Number.isFinite(far.statistic)).toBe(true)
})

test('too few are refused, equal ones have no shape', () => {
  expect(() => andersonDarling([1, 2, 3, 4, 5, 6, 7])).toThrow('at least 8 figures')
  expect(andersonDarling([2, 2, 2, 2, 2, 2, 2, 2])).toBeUndefined()
})
