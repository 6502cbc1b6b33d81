/** Eurachem/CITAC QUAM:2012, examples A1 to A3. */

import { describe, expect, test } from 'vitest'
import {
  type Estimate,
  budgetOf,
  estimate,
  measured,
  propagate,
  rectangular,
  triangular,
  uncertaintyOf
} from '../../src/metrology/estimate.ts'

const near = (actual: number, expected: number, within: number) =>
  expect(Math.abs(actual - expected)).toBeLessThan(within)

/** Volumetric glass: stated limit ±a as a triangle, and expansion of `volume` over ±4 °C. */
const glass = (name: string, volume_mL: number, a: number, span_mL: number, more = 0) =>
  measured(volume_mL, Math.hypot(triangular(a), rectangular(span_mL * 2.1e-4 * 4), more), name)

describe('QUAM:2012, A1: calibration standard, c = 1000 · m · P / V', () => {
  const result = propagate(x => (1000 * x.mass_mg * x.purity) / x.volume_mL, {
    mass_mg: measured(100.28, 0.05, 'm'),
    purity: measured(0.9999, rectangular(0.0001), 'P'),
    volume_mL: glass('V', 100, 0.1, 100, 0.02)
  })

  test('c = 1002.7 mg/L, u = 0.835 mg/L (prints 0.9)', () => {
    near(result.value, 1002.69972, 1e-5)
    near(uncertaintyOf(result), 0.835199, 1e-5)
  })

  test('the volume counts most, then the mass, then the purity', () => {
    const budget = budgetOf(result)
    expect(budget.map(line => line.pool)).toEqual(['V', 'm', 'P'])
    near(budget[0]!.u, 0.66653, 1e-4)
    near(budget[1]!.u, 0.49995, 1e-4)
    near(budget[2]!.u, 0.0579, 1e-4)
  })
})

/** Potassium hydrogen phthalate, 204.2212 g/mol with the guide's atomic weights. */
const standard = {
  mass_g: measured(0.3888, Math.hypot(rectangular(0.15e-3), rectangular(0.15e-3)), 'm'),
  purity: measured(1, rectangular(0.0005), 'P'),
  molarMass_g_per_mol: measured(204.2212, 0.0037653, 'M')
}

describe('QUAM:2012, A2: sodium hydroxide, c = 1000 · m · P / (M · V)', () => {
  const result = propagate(
    x => (1000 * x.repeatability * x.mass_g * x.purity) / (x.molarMass_g_per_mol * x.volume_mL),
    {
      ...standard,
      volume_mL: measured(18.64, Math.hypot(triangular(0.03), (19 * 2.1e-4 * 3) / 1.96), 'V'),
      repeatability: measured(1, 0.0005, 'repeatability')
    }
  )

  test('c = 0.10214 mol/L, u = 0.00010 mol/L', () => {
    near(result.value, 0.10213616, 1e-9)
    near(uncertaintyOf(result), 0.000100694, 1e-9)
  })

  test('figure A2.9: volume, repeatability, mass, purity, molar mass in this order', () => {
    const budget = budgetOf(result)
    expect(budget.map(line => line.pool)).toEqual(['V', 'repeatability', 'm', 'P', 'M'])
    const expected = [7.4989, 5.1068, 3.2174, 2.9484, 0.18831]
    expected.forEach((u, index) => near(1e5 * budget[index]!.u, u, 1e-3))
  })
})

describe('QUAM:2012, A3: hydrochloric acid, c = 1000 · m · P · V2 / (V1 · M · V)', () => {
  const titrated = (repeatability: number) =>
    propagate(
      x =>
        (1000 * x.repeatability * x.mass_g * x.purity * x.volume2_mL) /
        (x.volume1_mL * x.molarMass_g_per_mol * x.acid_mL),
      {
        ...standard,
        volume1_mL: glass('V1', 18.64, 0.03, 19),
        volume2_mL: glass('V2', 14.89, 0.03, 15),
        acid_mL: glass('V', 15, 0.02, 15),
        repeatability: measured(1, repeatability, 'repeatability')
      }
    )

  test('one titration: 0.10139 mol/L, u = 0.00018 mol/L (A3.5; table A3.1 prints 0.00016)', () => {
    near(titrated(0.001).value, 0.101387161, 1e-9)
    near(uncertaintyOf(titrated(0.001)), 0.000184339, 1e-9)
  })

  test('A3.6, three titrations: u = 0.00016 mol/L', () => {
    near(uncertaintyOf(titrated(0.001 / Math.sqrt(3))), 0.000164705, 1e-9)
  })

  test('in two steps, through the alkali, the same: causes carry through a chain of models', () => {
    const alkali: Estimate = propagate(
      x => (1000 * x.mass_g * x.purity) / (x.molarMass_g_per_mol * x.volume1_mL),
      { ...standard, volume1_mL: glass('V1', 18.64, 0.03, 19) }
    )
    const acid = propagate(x => (x.repeatability * x.c * x.volume2_mL) / x.acid_mL, {
      c: alkali,
      volume2_mL: glass('V2', 14.89, 0.03, 15),
      acid_mL: glass('V', 15, 0.02, 15),
      repeatability: measured(1, 0.001, 'repeatability')
    })
    near(acid.value, titrated(0.001).value, 1e-15)
    near(uncertaintyOf(acid), uncertaintyOf(titrated(0.001)), 1e-11)
  })

  test('one burette for both titrations cancels, which two independent ones do not', () => {
    const cause = { name: 'BU-1', pool: 'BU-1', kind: 'B', df: Infinity } as const
    const shared = propagate(x => x.volume2_mL / x.volume1_mL, {
      volume1_mL: estimate(18.64, [{ cause, u: 0.001 * 18.64 }]),
      volume2_mL: estimate(14.89, [{ cause, u: 0.001 * 14.89 }])
    })
    expect(uncertaintyOf(shared)).toBeLessThan(1e-9)
  })
})
