/** Tests of pieces of foil, from the demo's records to figures worked out by another route. */

import { describe, expect, test } from 'vitest'
import { expand } from '../../src/metrology/coverage.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { demoFiles, evaluate } from '../records-on-disk.ts'

const demo = evaluate(demoFiles)
const resultOf = (quantity: QuantityName) => demo.lots.get('FL-26-013')!.product[quantity]!
const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length

describe('strips of FL-26-013', () => {
  test('are kept apart by direction, by hand', () => {
    const along = [66.4 / 25.02 / 0.503, 69.1 / 25.05 / 0.505, 64.8 / 24.98 / 0.499]
    const across = [60.3 / 25.01 / 0.502, 62.7 / 25.04 / 0.506, 58.9 / 25.03 / 0.498]
    expect(resultOf('tensileAlong_MPa').estimate.value).toBeCloseTo(mean(along), 10)
    expect(resultOf('tensileAcross_MPa').estimate.value).toBeCloseTo(mean(across), 10)
    expect(resultOf('tensileAlong_MPa').n).toBe(3)
  })

  test('have a force per width with the gauge and the caliper in it, and no thickness', () => {
    const { estimate, trace } = resultOf('forceAlong_N_per_mm')
    expect(estimate.value).toBeCloseTo(mean([66.4 / 25.02, 69.1 / 25.05, 64.8 / 24.98]), 10)
    expect(trace.instrumentOf).toEqual({ force_N: 'FG-1', width_mm: 'CAL-1' })
    expect(expand(estimate).U).toBeGreaterThan(0)
  })
})

test('compression of FL-26-013: means of three pieces, by hand', () => {
  const [p, m, b] = [
    [0.496, 0.501, 0.493],
    [0.283, 0.289, 0.279],
    [0.318, 0.322, 0.315]
  ] as const
  const over = (figure: (p: number, m: number, b: number) => number) =>
    100 * mean(p.map((x, i) => figure(x, m[i]!, b[i]!)))
  expect(resultOf('compressibility_percent').estimate.value).toBeCloseTo(
    over((p, m) => (p - m) / p),
    9
  )
  expect(resultOf('recovery_percent').estimate.value).toBeCloseTo(
    over((p, m, b) => (b - m) / (p - m)),
    9
  )
  expect(resultOf('resiliency_percent').estimate.value).toBeCloseTo(
    over((p, m, b) => (b - m) / m),
    9
  )
})
