/** Further tests of flake, from the demo's records to figures worked out by another route. */

import { describe, expect, test } from 'vitest'
import { correlation, uncertaintyOf } from '../../src/metrology/estimate.ts'
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
