/** What surrounds the flake, against the same balance worked by hand. */

import { describe, expect, test } from 'vitest'
import { english } from '../../src/documents/languages/tongue.ts'
import { uncertaintyOf } from '../../src/metrology/estimate.ts'
import type { QuantityName } from '../../src/quantities.ts'
import {
  demoFiles,
  evaluate,
  problemsOf,
  smallFiles,
  withChange,
  withFile
} from '../records-on-disk.ts'

const demo = evaluate(demoFiles)
const figure = (lot: string, quantity: QuantityName) => demo.lots.get(lot)!.process[quantity]!

/** 360.9 g of 96 % acid, 22.70 mL of oxidiser of 1.113 g/cm³, 1270 g of water; 141.38 g of product. */
describe('EB-26-013 by hand', () => {
  const acid_mol = (2 * 360.9 * 0.96) / 98.072
  const drain = (mol: number, liquor: number, cake: number) => (mol * (cake - 141.38)) / liquor
  const filtered = drain(acid_mol, 360.9 + 22.7 * 1.113 + 1270, 452)
  const first = drain(filtered, 452 - 141.38 + 900, 448)
  const second = drain(first, 448 - 141.38 + 900, 445)
  const supplied = (6.5 * 0.99) / 84.006
  const left = second - supplied
  const rinsed = drain(left, 445 - 141.38 + 6.5 + 600, 443)
  const salt = drain(supplied, 445 - 141.38 + 6.5 + 600, 443)

  test.for([
    ['neutraliserDemand_g', (acid_mol * 84.006) / 0.99],
    ['neutraliserExcess', supplied / second],
    ['washedAcid_percent', ((rinsed / 2) * 98.072 * 100) / 141.38],
    ['washedSalt_percent', ((salt / 2) * 142.036 * 100) / 141.38],
    [
      'washedConductivity_uS_per_cm',
      1000 * (100 / 141.38) * (rinsed * (349.8 + 80) + salt * (50.1 + 80))
    ]
  ] as const)('%s is %f', ([quantity, expected]) => {
    expect(figure('EB-26-013', quantity).estimate.value / expected).toBeCloseTo(1, 9)
  })

  test('the quench: 209 kJ of dilution in 1656 g of liquor of 20.9 % acid', () => {
    const { estimate, remark } = figure('EB-26-013', 'dilutionRise_K')
    // Zeleznik by hand from its nodes: Q(0.504) 15.7, Q(20.46) 74.9 kJ/mol; cp 3.49 J/(g·K).
    expect(estimate.value / ((3.533 * (74.9 - 15.75)) / (1.656 * 3.49))).toBeCloseTo(1, 2)
    expect(english.results.remark(remark!)).toBe(
      'Logged at that step: at most 34 °C, after 29 °C when last logged before it.'
    )
  })

  test('the neutraliser is weighed on its balance and counted as its label says', () => {
    const { estimate } = figure('EB-26-013', 'neutraliserExcess')
    expect(uncertaintyOf(estimate)).toBeGreaterThan(0)
    expect([...estimate.terms.keys()].join()).toContain('NB-26-01 sodium hydrogen carbonate')
  })

  test('a batch whose steps do not say what they do has its demand and no more', () => {
    const { process } = demo.lots.get('EB-26-012')!
    expect(english.results.remark(process.neutraliserDemand_g!.remark!)).toMatch(
      /^Added: Sodium hydrogen carbonate, 7\.2 g\./u
    )
    expect(process.neutraliserExcess).toBeUndefined()
    expect(process.washedAcid_percent).toBeUndefined()
  })
})

describe('gas of a furnace run', () => {
  test('XR-26-03: bounds from what it lost, and the room of the record', () => {
    const loss = figure('XR-26-03', 'lossOnExpansion_percent').estimate.value
    const flake_g = demo.content.expansions
      .get('XR-26-03')!
      .record.from.reduce((sum, { mass_g }) => sum + mass_g.value, 0)
    const lost_g = (flake_g * loss) / 100
    const near = (quantity: QuantityName, expected: number) =>
      expect(figure('XR-26-03', quantity).estimate.value / expected).toBeCloseTo(1, 4)
    near('gasBound_L', (lost_g / 18.015) * 24.465)
    near('sulfurDioxideBound_g', (lost_g * 64.058) / 98.072)
    near('sulfurDioxideInRoom_mg_per_m3', ((lost_g * 64.058) / 98.072 / 85) * 1000)
  })

  test('without a room there is no figure for one', () => {
    const { process } = evaluate(smallFiles).lots.get('XR-1')!
    expect(process.gasBound_L).toBeDefined()
    expect(process.sulfurDioxideInRoom_mg_per_m3).toBeUndefined()
  })
})

const material = (lot: string, kind: string, composition: string) => `lot: ${lot}
title: ${lot}
kind: ${kind}
supplier: Quorl Acids
received: 2026-01-10
quantity: 5000 g
composition:
${composition}
`

/** The small workshop with acid of a known strength and a neutraliser. */
const neutralised = (composition: string, steps = '  - { what: neutralised, does: neutralise }') =>
  withFile(
    withChange(
      withChange(
        withChange(
          smallFiles,
          'batches/EB-1.yaml',
          '  - { material: SA-1, as: acid, mass: 300.0 g }',
          '  - { material: SA-1, as: acid, mass: 300.0 g }\n  - { material: NB-1, as: neutraliser, mass: 20.00 g }'
        ),
        'batches/EB-1.yaml',
        '  - { what: dried',
        `${steps}\n  - { what: dried`
      ),
      'materials/SA-1.yaml',
      'quantity: 2000 g',
      `quantity: 2000 g
composition:
  - { substance: sulfuric acid, fraction: 93 % }
  - { substance: water, fraction: 7 % }`
    ),
    'materials/NB-1.yaml',
    material('NB-1', 'neutraliser', composition)
  )

const small = (files: typeof smallFiles) => evaluate(files).lots.get('EB-1')!.process

describe('the strength of ammonia', () => {
  const ammonia = (as: string) => `  - { substance: ammonia, fraction: 10 %${as} }`

  test('as NH4OH takes 1 / 0.486 as much as NH3', () => {
    const nh3 = small(neutralised(ammonia(', as: NH3'))).neutraliserDemand_g!.estimate.value
    const nh4oh = small(neutralised(ammonia(', as: NH4OH'))).neutraliserDemand_g!.estimate.value
    expect(nh4oh / nh3).toBeCloseTo(35.046 / 17.031, 9)
    // 279 g of acid, as 3.72 g would take 12.92016 g.
    expect(nh3).toBeCloseTo((279 / 3.72) * 12.92016, 2)
  })

  test('unsaid gives no figure at all, and is told', () => {
    const files = neutralised(ammonia(''))
    const process = small(files)
    expect(process.neutraliserDemand_g).toBeUndefined()
    expect(process.neutraliserExcess).toBeUndefined()
    expect(problemsOf(files).filter(line => line.startsWith('UNSAID_STRENGTH'))).toHaveLength(1)
  })
})

describe('what adds to the demand', () => {
  const hydrogenCarbonate = '  - { substance: sodium hydrogen carbonate, fraction: 100 % }'
  const withSalt = (composition: string) =>
    withFile(
      withChange(
        neutralised(hydrogenCarbonate),
        'batches/EB-1.yaml',
        '  - { material: NB-1',
        '  - { material: OX-1, as: oxidiser, mass: 30.00 g }\n  - { material: NB-1'
      ),
      'materials/OX-1.yaml',
      material('OX-1', 'oxidiser', composition)
    )
  const plain = small(neutralised(hydrogenCarbonate)).neutraliserDemand_g!.estimate.value

  test.for([
    ['sodium nitrate'],
    ['potassium nitrate'],
    ['ammonium nitrate'],
    ['hydrogen peroxide'],
    ['potassium permanganate']
  ] as const)('%s adds nothing', ([salt]) => {
    const files = withSalt(`  - { substance: ${salt}, fraction: 99 % }`)
    expect(small(files).neutraliserDemand_g!.estimate.value).toBeCloseTo(plain, 9)
  })

  test('nitric acid adds its own hydrogen ion', () => {
    const files = withSalt('  - { substance: nitric acid, fraction: 65 % }')
    const more = small(files).neutraliserDemand_g!.estimate.value - plain
    expect(more).toBeCloseTo(((30 * 0.65) / 63.012) * 84.006, 6)
  })
})

test('a cake that holds more than there was is refused where it stands', () => {
  const files = neutralised(
    '  - { substance: sodium hydrogen carbonate, fraction: 100 % }',
    '  - { what: filtered, does: filter, cake: 900 g }'
  )
  expect(problemsOf(files).filter(line => line.startsWith('OUT_OF_DOMAIN'))).toEqual([
    'OUT_OF_DOMAIN steps.retained: must be at most liquor (320 g), got 780 g'
  ])
})

test('a batch without a base, or without acid of a known strength, has no demand', () => {
  expect(small(smallFiles).neutraliserDemand_g).toBeUndefined()
})
