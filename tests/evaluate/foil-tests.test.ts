/** Tests of pieces of foil, from the demo's records to figures worked out by another route. */

import { describe, expect, test } from 'vitest'
import { english } from '../../src/documents/languages/tongue.ts'
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
    expect(trace().instrumentOf).toEqual({ force_N: 'FG-1', width_mm: 'CAL-1' })
    expect(expand(estimate).U).toBeGreaterThan(0)
  })
})

test('compression of FL-26-013: means of three pieces, by hand', () => {
  const [p, m, b] = [
    [0.496, 0.501, 0.493],
    [0.283, 0.289, 0.279],
    [0.318, 0.322, 0.315]
  ] as const
  const over = (figure: (preload: number, loaded: number, back: number) => number) =>
    100 * mean(p.map((x, i) => figure(x, m[i]!, b[i]!)))
  expect(resultOf('compressibility_percent').estimate.value).toBeCloseTo(
    over((preload, loaded) => (preload - loaded) / preload),
    9
  )
  expect(resultOf('recovery_percent').estimate.value).toBeCloseTo(
    over((preload, loaded, back) => (back - loaded) / (preload - loaded)),
    9
  )
  expect(resultOf('resiliency_percent').estimate.value).toBeCloseTo(
    over((_, loaded, back) => (back - loaded) / loaded),
    9
  )
})

describe('electrical figures of FL-26-013', () => {
  test('four points on a disc of 25 spacings, t/s = 0.25: C alone, by hand', () => {
    const square = (50 / 2) ** 2
    const factor = Math.PI / (Math.LN2 + Math.log((square + 3) / (square - 3)))
    const ratios = [0.4631 / 100.02, 0.4577 / 100.02, 0.466 / 100.03]
    const { estimate } = resultOf('sheetResistance_mOhm')
    expect(estimate.value).toBeCloseTo(1000 * factor * mean(ratios), 9)
    expect([...estimate.terms.keys()]).toContain('CAL-1 tolerance')
  })

  test('van der Pauw: each pair satisfies the relation', () => {
    for (const [index, [first, second]] of [
      [4.61, 4.38],
      [4.66, 4.41]
    ].entries()) {
      const { value } = resultOf('vanDerPauw_mOhm').each[index]!.estimate
      const sum = Math.exp((-Math.PI * first!) / value) + Math.exp((-Math.PI * second!) / value)
      expect(sum).toBeCloseTo(1, 12)
    }
  })

  test('strip: R · w · t / L, and its reciprocal in kS/m, with the direction beside both', () => {
    const each = [
      (161.2 * 10.02 * 0.503) / 80,
      (158.9 * 10.05 * 0.504) / 80,
      (163.5 * 9.98 * 0.5) / 80
    ]
    const { estimate, remark } = resultOf('resistivity_uOhmm')
    expect(estimate.value).toBeCloseTo(mean(each), 9)
    expect(resultOf('foilConductivity_kS_per_m').estimate.value).toBeCloseTo(1000 / mean(each), 7)
    expect(english.results.remark(remark!)).toBe('Strips cut along the direction of forming.')
  })
})

test('oxidation loss of FL-26-013: mean of three pieces, with hours and temperature beside it', () => {
  const each = [1 - 1.5911 / 1.8843, 1 - 1.6204 / 1.9027, 1 - 1.5682 / 1.8651]
  const { estimate, remark } = resultOf('oxidationLoss_percent')
  expect(estimate.value).toBeCloseTo(100 * mean(each), 10)
  expect(english.results.remark(remark!)).toBe('Held 24 h at 593 °C.')
})

test('leachable chloride of FL-26-013: less the blank, by hand', () => {
  const each = [((0.94 - 0.11) * 100) / 5.02, ((0.99 - 0.11) * 100) / 5.04]
  expect(resultOf('leachableChloride_mg_per_kg').estimate.value).toBeCloseTo(mean(each), 10)
})
