/** Further tests of flake, from the demo's records to figures worked out by another route. */

import { describe, expect, test } from 'vitest'
import { english } from '../../src/documents/languages/tongue.ts'
import { uncertaintyOf } from '../../src/metrology/estimate.ts'
import { correlation } from '../metrology/correlation.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { demoFiles, evaluate } from '../records-on-disk.ts'

const demo = evaluate(demoFiles)
const resultOf = (lot: string, quantity: QuantityName) => demo.lots.get(lot)!.product[quantity]!

describe('bulk density of EB-26-012', () => {
  test('loose and tapped: means of m/V, by hand', () => {
    const loose = (30.02 / 50.5 + 30.05 / 51 + 29.98 / 50) / 3
    const tapped = (30.02 / 42 + 30.05 / 42.5 + 29.98 / 41.5) / 3
    expect(resultOf('EB-26-012', 'looseDensity_g_per_mL').estimate.value).toBeCloseTo(loose, 12)
    expect(resultOf('EB-26-012', 'tappedDensity_g_per_mL').estimate.value).toBeCloseTo(tapped, 12)
  })

  test('makes the expansion ratio, which is then correlated with it', () => {
    const ratio = resultOf('EB-26-012', 'expansionRatio').estimate
    const volume = resultOf('EB-26-012', 'expansionVolume_mL_per_g').estimate
    const loose = resultOf('EB-26-012', 'looseDensity_g_per_mL').estimate
    expect(ratio.value).toBeCloseTo(volume.value * loose.value, 10)
    expect(correlation(ratio, loose)).toBeGreaterThan(0.3)
    expect(uncertaintyOf(ratio) / ratio.value).toBeGreaterThan(uncertaintyOf(loose) / loose.value)
  })
})

describe('sieve analysis of EB-26-015', () => {
  test('retained on 300 µm: mean of two runs, of the mass recovered, by hand', () => {
    const first = (3.94 + 39.12) / (3.94 + 39.12 + 5.06 + 0.83 + 0.68 + 0.24)
    const second = (3.71 + 39.3) / (3.71 + 39.3 + 5.18 + 0.8 + 0.61 + 0.21)
    const { estimate, n } = resultOf('EB-26-015', 'retained300_percent')
    expect(n).toBe(2)
    expect(estimate.value).toBeCloseTo((100 * (first + second)) / 2, 10)
  })

  test('loss: of the mass charged', () => {
    const loss = (1 - 49.87 / 50.02 + (1 - 49.81 / 49.97)) / 2
    expect(resultOf('EB-26-015', 'sieveLoss_percent').estimate.value).toBeCloseTo(100 * loss, 10)
  })

  test('a size carries the tolerance of its sieves, a retained part does not', () => {
    const causes = (quantity: QuantityName) => [
      ...resultOf('EB-26-015', quantity).estimate.terms.keys()
    ]
    expect(causes('d50_um')).toContain('mean aperture of sieve 300 µm')
    expect(causes('retained300_percent').filter(name => name.includes('aperture'))).toEqual([])
  })
})

describe('sulfur of EB-26-015', () => {
  const perBariumSulfate = 32.06 / (137.33 + 32.06 + 4 * 15.999)

  test('mean of two precipitates less the mean blank, by hand', () => {
    const first = (0.0961 - 0.00035) / 0.5012
    const second = (0.0948 - 0.00035) / 0.4987
    const { estimate } = resultOf('EB-26-015', 'sulfur_percent')
    expect(estimate.value).toBeCloseTo(50 * perBariumSulfate * (first + second), 10)
  })

  test('as acid, over what was taken up: dry product 246.31 g, dry graphite by its own moisture', () => {
    const { process } = demo.lots.get('EB-26-015')!
    const acid = resultOf('EB-26-015', 'acidEquivalent_percent').estimate.value
    const moisture = resultOf('EB-26-015', 'moisture_percent').estimate.value
    const uptake = process.uptake_percent!.estimate.value
    const explained = acid / (1 - moisture / 100) / (uptake / (100 + uptake))
    expect(process.sulfurExplained_percent!.estimate.value).toBeCloseTo(explained, 8)
  })

  test('as reported elsewhere makes an equivalent that says so', () => {
    const { estimate, remark } = resultOf('EB-26-012', 'acidEquivalent_percent')
    expect(estimate.value).toBeCloseTo((2.6 * 98.072) / 32.06, 9)
    expect(english.results.remark(remark!)).toBe(
      'From the external result for sulfur: an external laboratory, report P-4533.'
    )
  })
})

test('conductivity of EB-26-015: each reading at its own temperature, less the water, by hand', () => {
  const first = (214 - 1.4) / (1 + 0.02 * (22.8 - 25))
  const second = (219 - 1.4) / (1 + 0.02 * (23.1 - 25))
  const { estimate } = resultOf('EB-26-015', 'conductivity_uS_per_cm')
  expect(estimate.value).toBeCloseTo((first + second) / 2, 9)
})

test('onset of EB-26-015: mean of three, with its definition beside it', () => {
  const { estimate, remark } = resultOf('EB-26-015', 'onset_C')
  expect(estimate.value).toBeCloseTo((194 + 197 + 192) / 3, 12)
  expect(english.results.remark(remark!)).toBe(
    'Defined as: extrapolated onset of the height curve, heated at 10 K/min.'
  )
})

describe('expansion of EB-26-015 under other conditions', () => {
  test.for([
    [400, (61 / 0.5013 + 58 / 0.4992) / 2],
    [600, (104 / 0.5021 + 107 / 0.5006) / 2],
    [800, (128 / 0.4988 + 131 / 0.503) / 2]
  ] as const)('at %i °C: mean of its own readings, by hand', ([temperature, value]) => {
    const { estimate, n } = resultOf('EB-26-015', `expansionAt${temperature}_mL_per_g`)
    expect(estimate.value).toBeCloseTo(value, 10)
    expect(n).toBe(2)
  })

  test('after a soak: over the lot’s own, with what the cylinder does to both cancelled in part', () => {
    const soaked = resultOf('EB-26-015', 'soakedExpansion_mL_per_g').estimate
    const own = resultOf('EB-26-015', 'expansionVolume_mL_per_g').estimate
    const { estimate, remark } = resultOf('EB-26-015', 'soakKept_percent')
    expect(estimate.value).toBeCloseTo((100 * soaked.value) / own.value, 10)
    expect(english.results.remark(remark!)).toBe('Soaked for 24 h in water at 23 °C.')
    const relative = (one: typeof own) => uncertaintyOf(one) / one.value
    expect(relative(estimate)).toBeLessThan(Math.hypot(relative(soaked), relative(own)))
  })
})

describe('a method that serves several figures', () => {
  const pools = (quantity: QuantityName) => [
    ...new Set([...resultOf('EB-26-015', quantity).estimate.terms.values()].map(t => t.cause.pool))
  ]

  test('lends its repeatability to the quantity it names, and to none in another unit or kind', () => {
    const named = 'TM-15 repeatability (8 samples of 2026 in duplicate)'
    expect(pools('retained300_percent')).toContain(named)
    for (const other of ['retained180_percent', 'd50_um', 'sieveLoss_percent'] as const)
      expect(pools(other)).not.toContain(named)
  })

  test('lends it to the same figure at another temperature', () => {
    for (const quantity of ['expansionAt400_mL_per_g', 'expansionAt600_mL_per_g'] as const)
      expect(pools(quantity)).toContain('TM-29 repeatability (6 lots of 2026 in triplicate)')
  })
})
