/** Figures of the demo, from record to estimate, against values found by another route. */

import { describe, expect, test } from 'vitest'
import type { Result } from '../../src/evaluate/types.ts'
import { expand } from '../../src/metrology/coverage.ts'
import { budgetOf, type Estimate, uncertaintyOf } from '../../src/metrology/estimate.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { demoFiles, evaluate, withChange } from '../records-on-disk.ts'
import { correlation } from '../metrology/correlation.ts'

const demo = evaluate(demoFiles)

const resultOf = (lot: string, quantity: QuantityName, content = demo): Result => {
  const result = content.lots.get(lot)?.product[quantity]
  if (!result) throw new Error(`${lot} has no ${quantity}`)
  return result
}

function expectFigure(estimate: Estimate, [value, u, k, U, df]: readonly number[]) {
  expect(estimate.value).toBeCloseTo(value!, 10)
  expect(uncertaintyOf(estimate) / u!).toBeCloseTo(1, 6)
  const expanded = expand(estimate)
  expect(expanded.k).toBeCloseTo(k!, 6)
  expect(expanded.U / U!).toBeCloseTo(1, 6)
  expect(expanded.df).toBe(df)
}

/*
 * Recomputed with NumPy 1.24 and SciPy 1.10 from the numbers in the records: all raw readings as one
 * vector x, their covariance matrix Σ as a sum of blocks (a shared error is a full block, an own one
 * a diagonal), the Jacobian J of the whole formula by a complex step of 10⁻³⁰, u² = J Σ Jᵀ, degrees
 * of freedom by Welch–Satterthwaite over the blocks, k = t.ppf(0.975, floor(ν)).
 *
 * Blocks: a calibration U/k, a tolerance a/√3, a resolution step/2/√3, all with ν = ∞; the pooled
 * repeatability of the method as one further input of s/√n; sample scatter with ν = n − 1.
 */
describe('against a covariance matrix over the raw readings', () => {
  test('expansion volume of EB-26-001: mean of V/m over four readings', () => {
    // BAL-1 0.3 mg, k = 2, step 0.1 mg; CYL-1 ±1 mL, step 1 mL; s = 4.6 mL/g, ν = 27. ν = 43.41.
    const { estimate, n } = resultOf('EB-26-001', 'expansionVolume_mL_per_g')
    expect(n).toBe(4)
    expectFigure(estimate, [269.505017153624, 2.58997888354, 2.0166921992, 5.22319021061, 43])
  })

  test('free acidity of EB-26-001: mean of (V − mean blank) c M/20/m over two titrations', () => {
    // BUR-1 0.012 mL, k = 2, step 0.01 mL, on titres and blanks alike; blanks 0.04, 0.05, 0.06 mL with
    // their own scatter, ν = 2; BAL-2 ±0.03 g, step 0.01 g; titrant 0.1002(3) mol/L, k = 2;
    // s = 0.0022 %, ν = 12; M = 2·1.0080 + 32.06 + 4·15.999. ν = 13.11.
    const { estimate, n, below } = resultOf('EB-26-001', 'freeAcid_percent')
    expect([n, below]).toEqual([2, undefined])
    expectFigure(estimate, [0.0625533561608, 0.00159297896628, 2.1603686563, 0.00344142182917, 13])
  })

  // BAL-1 as above; CAL-1 ±0.03 mm, step 0.01 mm, on lengths and widths alike; MIC-1 0.002 mm, k = 2,
  // step 0.001 mm; the five positions of each sheet with their own scatter, ν = 4.
  test.for([
    ['01-1', 0.973637272394, 0.00525968206553, 2.5705818356, 0.0135204431789, 5],
    ['01-2', 0.98771374808, 0.00883100010052, 2.7764451052, 0.0245187870031, 4],
    ['01-3', 1.0007986579, 0.00661929108044, 2.7764451052, 0.0183780983202, 4],
    ['01-4', 1.00011980048, 0.0063276431048, 2.7764451052, 0.0175683537257, 4]
  ] as const)('foil density of FL-26-001, sheet %s', ([id, ...figure]) => {
    const { each } = resultOf('FL-26-001', 'foilDensity_g_per_cm3')
    expectFigure(each.find(({ label }) => label === `sheet ${id}`)!.estimate, figure)
  })

  test('foil density of FL-26-001, mean of the sheets: what they share does not average out', () => {
    const { estimate, n } = resultOf('FL-26-001', 'foilDensity_g_per_cm3')
    expect(n).toBe(4)
    expectFigure(estimate, [0.99056736970971, 0.00385679696855, 2.0595385528, 0.00794322204686, 25])
    const own = budgetOf(estimate).filter(({ pool }) => pool.includes('scatter'))
    expect(own).toHaveLength(4)
  })

  test('moisture of EB-26-001: mean of two dishes', () => {
    // BAL-1 as above on all six weighings; s = 0.025 %, ν = 14. ν = 14.11.
    expectFigure(
      resultOf('EB-26-001', 'moisture_percent').estimate,
      [0.442372939948, 0.0177115714517, 2.1447866879, 0.0379875426717, 14]
    )
  })

  test('expansion volumes of two lots are correlated by the balance and cylinder they share', () => {
    // Σ over BAL-1 and CYL-1 of the product of the two sensitivities, over u·u′: 0.216618.
    const [one, other] = ['EB-26-001', 'EB-26-003'].map(
      lot => resultOf(lot, 'expansionVolume_mL_per_g').estimate
    )
    expect(correlation(one!, other!)).toBeCloseTo(0.2166179607, 7)
  })
})

describe('what is shared', () => {
  const onOthers = evaluate(
    withChange(
      withChange(
        demoFiles,
        'batches/EB-26-003.yaml',
        '  expansion-volume:\n',
        '  expansion-volume:\n    instruments: { mass: BAL-2, volume: CYL-2 }\n'
      ),
      'batches/EB-26-001.yaml',
      '  expansion-volume:\n',
      '  expansion-volume:\n    instruments: { mass: BAL-1, volume: CYL-1 }\n'
    )
  )

  test('nothing: on other instruments two lots are not correlated', () => {
    const [one, other] = ['EB-26-001', 'EB-26-003'].map(
      lot => resultOf(lot, 'expansionVolume_mL_per_g', onOthers).estimate
    )
    expect(correlation(one!, other!)).toBe(0)
  })

  test('moisture by difference cancels the calibration of the balance, expansion volume does not', () => {
    const coarse = evaluate(
      withChange(demoFiles, 'instruments/BAL-1.yaml', 'uncertainty: 0.3 mg', 'uncertainty: 30 mg')
    )
    const growth = (quantity: QuantityName) =>
      uncertaintyOf(resultOf('EB-26-001', quantity, coarse).estimate) /
      uncertaintyOf(resultOf('EB-26-001', quantity).estimate)
    expect(growth('moisture_percent')).toBeCloseTo(1, 9)
    expect(growth('expansionVolume_mL_per_g')).toBeGreaterThan(1.5)
  })

  test('a titre less its blank cancels the calibration of the burette', () => {
    const { estimate } = resultOf('EB-26-001', 'freeAcid_percent')
    const share = budgetOf(estimate).find(({ pool }) => pool === 'BUR-1 calibration')?.share ?? 0
    expect(share).toBeLessThan(1e-12)
    expect(budgetOf(estimate).map(({ pool }) => pool)).toContain('BUR-1 resolution')
  })

  test('ash and fixed carbon of one lot are anticorrelated', () => {
    const ash = resultOf('EB-26-001', 'ash_percent').estimate
    const carbon = resultOf('EB-26-001', 'devolatilisedCarbon_percent').estimate
    expect(correlation(ash, carbon)).toBeLessThan(-0.9)
  })
})
