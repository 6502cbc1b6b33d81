/** Foil under load, and heat along it: the demo's records to figures worked out by another route. */

import { describe, expect, test } from 'vitest'
import { expand } from '../../src/metrology/coverage.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { english } from '../../src/documents/languages/tongue.ts'
import { demoFiles, evaluate, problemsOf, withChange } from '../records-on-disk.ts'

const demo = evaluate(demoFiles)
const lot = 'FL-26-014'
const file = `foils/${lot}.yaml`
const resultOf = (quantity: QuantityName, files = demo) => files.lots.get(lot)!.product[quantity]!
const said = (quantity: QuantityName, files = demo) =>
  english.results.remark(resultOf(quantity, files).remark!)
const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length

test('creep relaxation: mean of three, load, time and temperature beside it', () => {
  const each = [0.119 / 0.1245, 0.1185 / 0.125, 0.118 / 0.1235].map(kept => 100 * (1 - kept))
  const { estimate, n } = resultOf('creepRelaxation_percent')
  expect(estimate.value).toBeCloseTo(mean(each), 10)
  expect(n).toBe(3)
  expect(said('creepRelaxation_percent')).toBe(
    'Clamped with 26.7 kN, 20.9 MPa, held 22 h at 100 °C.'
  )
})

test('creep of a load alone tells that load', () => {
  const files = withChange(demoFiles, file, '    stress: 20.9 MPa\n', '')
  expect(said('creepRelaxation_percent', evaluate(files))).toBe(
    'Clamped with 26.7 kN, held 22 h at 100 °C.'
  )
})

describe('gas leak', () => {
  const moles = (kPa: number, at_C: number) => (kPa * 0.2514) / (8.314462618 * (at_C + 273.15))
  const rate = (lost_mol: number) => (28.014e3 * lost_mol) / (3600 * Math.PI * 0.07)

  test('from amounts of gas, with gas, pressure, stress and temperature beside it', () => {
    const each = [
      rate(moles(4103.2, 22.9) - moles(4089.5, 23)),
      rate(moles(4098.7, 23) - moles(4083.1, 23))
    ]
    const { estimate } = resultOf('leakRate_mg_per_sm')
    expect(estimate.value).toBeCloseTo(mean(each), 10)
    expect(said('leakRate_mg_per_sm')).toBe(
      'Gas: nitrogen, from 4103.2 kPa absolute, ring under 32 MPa, at 22.9 °C.'
    )
  })

  test('volume and ring err alike in both readings; the thermometer leads', () => {
    const { estimate } = resultOf('leakRate_mg_per_sm')
    const volume = [...estimate.terms.values()].filter(({ cause }) =>
      /closed volume/u.test(cause.name)
    )
    expect(volume).toHaveLength(1)
    const share = (pool: RegExp) =>
      [...estimate.terms.values()]
        .filter(({ cause }) => pool.test(cause.pool))
        .reduce((sum, { u }) => sum + u * u, 0)
    expect(share(/^TH-1 resolution/u)).toBeGreaterThan(10 * share(/^PG-1/u))
  })

  test('of helium weighs a seventh of that of nitrogen', () => {
    const helium = evaluate(withChange(demoFiles, file, 'gas: nitrogen', 'gas: helium'))
    const part =
      resultOf('leakRate_mg_per_sm', helium).estimate.value /
      resultOf('leakRate_mg_per_sm').estimate.value
    expect(part).toBeCloseTo(4.0026 / 28.014, 10)
  })
})

describe('heat along the foil', () => {
  test('is diffusivity, the density of the lot and the heat capacity stated', () => {
    const density = resultOf('foilDensity_g_per_cm3').estimate.value
    const { estimate } = resultOf('thermalConductivity_W_per_mK')
    expect(estimate.value).toBeCloseTo(mean([229, 221, 234]) * density * 0.71, 9)
    expect(said('thermalConductivity_W_per_mK')).toBe(
      'Measured along the direction of forming, at 23 °C.'
    )
  })

  test('is estimated where the record asks for it alone, and said to be no measurement', () => {
    const sigma = resultOf('foilConductivity_kS_per_m').estimate.value
    const { estimate } = resultOf('thermalEstimate_W_per_mK')
    expect(estimate.value).toBeCloseTo(6e-3 * sigma * 296.15, 9)
    expect(expand(estimate).U / estimate.value).toBeGreaterThan(0.11)
    expect(said('thermalEstimate_W_per_mK')).toMatch(
      /^Estimated for 23 °C .* no heat was measured\.$/u
    )
    expect(demo.lots.get('FL-26-013')!.product.thermalEstimate_W_per_mK).toBeUndefined()
  })

  test('needs the density of the lot', () => {
    const text = demoFiles.find(({ path }) => path.endsWith(file))!.text
    const sheets = /^sheets:\n(?:[ ].*\n)+/mu.exec(text)![0]
    expect(problemsOf(withChange(demoFiles, file, sheets, ''))).toContain(
      'MISSING_FIELD tests.thermal-conductivity: needs the foil density of the lot'
    )
  })
})

describe('a report of what depends on how it was found', () => {
  const scope = /^ {4}scope: pair of m and y.*\n/mu
  const text = demoFiles.find(({ path }) => path.endsWith(file))!.text

  test('has to say how', () => {
    const files = withChange(demoFiles, file, scope.exec(text)![0], '')
    expect(problemsOf(files)).toContain(
      'MISSING_FIELD reported.gasket-factor-m: is reported without its conditions: the rule it belongs to and the tightness it stands for'
    )
  })

  test('may say it as its method', () => {
    const line = scope.exec(text)![0]
    const files = withChange(demoFiles, file, line, line.replace('scope:', 'method:'))
    expect(problemsOf(files)).toEqual(problemsOf(demoFiles))
  })
})

test('a report of what depends on nothing need not say how it was found', () => {
  const line = '    method: burnt in oxygen, ion chromatography\n'
  expect(problemsOf(withChange(demoFiles, file, line, ''))).toEqual(problemsOf(demoFiles))
})

describe('halogen that leaches out, all of one, and all of them', () => {
  const doubts = (from: string, to: string) =>
    problemsOf(withChange(demoFiles, file, from, to)).filter(line =>
      line.startsWith('CONTRADICTION')
    )

  test('go together in the demo', () => {
    expect(doubts('lot: ', 'lot: ')).toEqual([])
  })

  test.for([
    [
      'value: 23 mg/kg',
      'value: 12 mg/kg',
      'CONTRADICTION reported.total-halogen: total halogen of 12 mg/kg does not go with total chlorine of 21 mg/kg, which is part of it'
    ],
    [
      'value: 23 mg/kg\n    without-uncertainty: sum of four results, bromine and iodine below 1 mg/kg each',
      'less-than: 10 mg/kg',
      'CONTRADICTION reported.total-halogen: total halogen of less than 10 mg/kg does not go with total chlorine of 21 mg/kg, which is part of it'
    ],
    [
      'reported:\n',
      'reported:\n  leachable-fluoride: { value: 9 mg/kg, without-uncertainty: not stated, laboratory: L, report: P-1, date: 2026-11-03 }\n',
      'CONTRADICTION reported.total-fluorine: total fluorine of less than 5 mg/kg does not go with leachable fluoride of 9 mg/kg, which is part of it'
    ],
    [
      'reported:\n',
      'reported:\n  leachable-chloride: { value: 40 mg/kg, without-uncertainty: not stated, laboratory: L, report: P-1, date: 2026-11-03 }\n',
      'CONTRADICTION reported.total-chlorine: total chlorine of 21 mg/kg does not go with leachable chloride of 40 mg/kg, which is part of it'
    ]
  ] as const)('%s → %s', ([from, to, told]) => {
    expect(doubts(from, to)).toEqual([told])
  })

  const stated = (key: string, figure: string) =>
    `reported:\n  ${key}: { ${figure}, laboratory: L, report: P-1, date: 2026-11-03 }\n`

  test('fluorine counts in all halogen as well', () => {
    const text = demoFiles.find(({ path }) => path.endsWith(file))!.text
    const block = /^ {2}total-fluorine:\n(?: {4}.*\n)+/mu.exec(text)![0]
    const bare = withChange(demoFiles, file, block, '')
    const fluorine = 'value: 60 mg/kg, without-uncertainty: not stated'
    const files = withChange(bare, file, 'reported:\n', stated('total-fluorine', fluorine))
    expect(problemsOf(files)).toContain(
      'CONTRADICTION reported.total-halogen: total halogen of 23 mg/kg does not go with total fluorine of 60 mg/kg, which is part of it'
    )
  })

  test('less than a high limit contradicts nothing', () => {
    expect(doubts('reported:\n', stated('leachable-chloride', 'less-than: 100 mg/kg'))).toEqual([])
  })

  test('a difference that the uncertainties explain is none', () => {
    expect(doubts('value: 23 mg/kg', 'value: 20 mg/kg')).toEqual([])
  })
})
