/** Lots made from lots: days, amounts, circles, blends. */

import { describe, expect, test } from 'vitest'
import { expectedTable } from '../../src/documents/expected.ts'
import type { EvaluatedBatch } from '../../src/evaluate/types.ts'
import {
  demoFiles,
  evaluate,
  problemsOf,
  smallFiles,
  withChange,
  withFile
} from '../records-on-disk.ts'
import { correlation } from '../metrology/correlation.ts'

const changed = (path: string, from: string, to: string) =>
  problemsOf(withChange(smallFiles, path, from, to))

test('the small workshop has nothing to complain of but its balance of readings', () => {
  expect(problemsOf(smallFiles)).toEqual([])
})

describe('days', () => {
  test.for([
    [
      'a material used before it came',
      'materials/GR-1.yaml',
      'received: 2026-01-10',
      'received: 2026-02-03',
      'USED_BEFORE_MADE charge.0.material: EB-1 used GR-1 on 2026-02-02, before it was there on 2026-02-03'
    ],
    [
      'a material used after it expired',
      'materials/SA-1.yaml',
      'expires: 2027-01-31',
      'expires: 2026-02-01',
      'DATE_ORDER charge.1.material: EB-1 used SA-1 on 2026-02-02, after it expired on 2026-02-01'
    ],
    [
      'a run before its batch',
      'expansions/XR-1.yaml',
      'made: 2026-02-10',
      'made: 2026-02-01',
      'USED_BEFORE_MADE from.0.lot: XR-1 used EB-1 on 2026-02-01, before it was there on 2026-02-02'
    ],
    [
      'foil before its worms',
      'foils/FL-1.yaml',
      'made: 2026-02-12',
      'made: 2026-02-09',
      'USED_BEFORE_MADE from.0.lot: FL-1 used XR-1 on 2026-02-09, before it was there on 2026-02-10'
    ],
    [
      'a test before the lot was made',
      'batches/EB-1.yaml',
      'tested: 2026-02-04',
      'tested: 2026-02-01',
      'DATE_ORDER tests.expansion-volume.tested: was tested on 2026-02-01, before the lot was made on 2026-02-02'
    ],
    [
      'a titrant standardised later',
      'titrants/NA-1.yaml',
      'standardised: 2026-01-20',
      'standardised: 2026-02-06',
      'DATE_ORDER tests.free-acid.titrant: titrant NA-1 stands from 2026-02-06 to 2026-04-20, not on 2026-02-05'
    ]
  ] as const)('%s', ([, path, from, to, problem]) => {
    expect(changed(path, from, to)).toContain(problem)
  })

  test.for([
    ['materials/GR-1.yaml', 'received: 2026-01-10', 'received: 2026-02-02'],
    ['materials/SA-1.yaml', 'expires: 2027-01-31', 'expires: 2026-02-02'],
    ['titrants/NA-1.yaml', 'standardised: 2026-01-20', 'standardised: 2026-02-05']
  ] as const)('the same day is in time: %s', ([path, from, to]) => {
    expect(changed(path, from, to)).toEqual([])
  })
})

describe('amounts', () => {
  test('the use that overdraws a lot gets the problem', () => {
    // 120.00 g made; the tests took 1.502 g and 20.015 g.
    expect(changed('expansions/XR-1.yaml', 'mass: 50.00 g', 'mass: 98.50 g')).toContain(
      'OVERDRAWN from.0.lot: XR-1 takes 98.5 g of EB-1, which has 98.483 g left'
    )
    expect(changed('expansions/XR-1.yaml', 'mass: 50.00 g', 'mass: 98.48 g')).not.toContainEqual(
      expect.stringContaining('OVERDRAWN')
    )
  })

  test('foil cannot weigh more than its worms', () => {
    expect(changed('foils/FL-1.yaml', 'mass: 20.00 g }', 'mass: 9.99 g }')).toContain(
      'IMPOSSIBLE_BALANCE sheets: the sheets weigh 9.995 g, more than the 9.99 g of worms they were made from'
    )
  })
})

const blend = `lot: EB-2
grade: FK-1
made: 2026-03-02
instruments: { mass: BAL-1 }
from:
  - { lot: EB-1, mass: 10.00 g }
  - { lot: EB-3, mass: 30.00 g }
product: { mass: 40.00 g }
`

/** EB-1 again, under another number and with other readings. */
const second = smallFiles
  .find(({ path }) => path.endsWith('EB-1.yaml'))!
  .text.replace('EB-1', 'EB-3')
  .replace('130 mL', '150 mL')
  .replace('128 mL', '149 mL')
  .replace('133 mL', '152 mL')
  .replace('1.34 mL', '2.34 mL')
  .replace('1.31 mL', '2.31 mL')

const blended = withFile(
  withFile(smallFiles, 'batches/EB-2.yaml', blend),
  'batches/EB-3.yaml',
  second
)

describe('a blend', () => {
  const content = evaluate(blended)
  const lotOf = (lot: string) => content.lots.get(lot) as EvaluatedBatch

  test('is expected to come to the mean of its parts by mass', () => {
    const table = expectedTable(content.lots, lotOf('EB-2').entry.record)!
    const valueOf = (lot: string) => lotOf(lot).product.expansionVolume_mL_per_g!.estimate.value
    const mean = 0.25 * valueOf('EB-1') + 0.75 * valueOf('EB-3')
    const [title, expected, U] = table.rows[0]!
    expect(title).toBe('Expansion volume')
    expect(Number(expected!.split(' ')[0])).toBeCloseTo(mean, 0)
    expect(U).toMatch(/^\d\.\d mL\/g$/u)
    expect(table.caption).toContain('Expected')
  })

  test('is measured by nobody: what its parts came to is no figure of its own', () => {
    expect(lotOf('EB-2').product).toEqual({})
    expect(problemsOf(blended)).toEqual([])
  })

  test('is looked through by the yield of what is made from it', () => {
    const run = `lot: XR-2
made: 2026-03-10
instruments: { mass: BAL-1, volume: CYL-1 }
from:
  - { lot: EB-2, mass: 20.00 g }
temperature: 950 °C
worms: { mass: 16.80 g }
`
    const lots = evaluate(withFile(blended, 'expansions/XR-2.yaml', run)).lots
    const direct = lots.get('XR-1')!.process.carbonRecovery_percent!.estimate
    const through = lots.get('XR-2')!.process.carbonRecovery_percent!.estimate
    // Both parts came from 100 g of graphite each and gave 120 g: 84 % of 120 % either way.
    expect(direct.value).toBeCloseTo(100.8, 0)
    expect(through.value).toBeCloseTo(direct.value, 6)
    expect(correlation(direct, through)).toBeGreaterThan(0)
  })

  test('counts by the graphite its parts came from, not by their mean', () => {
    const heavier = withChange(blended, 'batches/EB-3.yaml', 'mass: 120.00 g', 'mass: 150.00 g')
    const run = `lot: XR-2
made: 2026-03-10
instruments: { mass: BAL-1, volume: CYL-1 }
from:
  - { lot: EB-1, mass: 12.00 g }
  - { lot: EB-3, mass: 15.00 g }
temperature: 950 °C
worms: { mass: 20.00 g }
`
    const { lots } = evaluate(withFile(heavier, 'expansions/XR-2.yaml', run))
    // 12 g at 120 % and 15 g at 150 % came from 10 g of graphite each.
    expect(lots.get('XR-2')!.process.carbonRecovery_percent!.estimate.value).toBeCloseTo(100, 9)
  })

  test('made in a circle is refused by name', () => {
    const circle = withChange(
      blended,
      'batches/EB-3.yaml',
      'charge:\n  - { material: GR-1, as: graphite, mass: 100.00 g }\n  - { material: SA-1, as: acid, mass: 300.0 g }',
      'from:\n  - { lot: EB-2, mass: 1 g }'
    )
    expect(problemsOf(circle).filter(line => line.startsWith('LOT_CYCLE'))).toEqual([
      'LOT_CYCLE from.0.lot: goes round in a circle: EB-2 from EB-3 from EB-2'
    ])
  })
})

describe('readings', () => {
  test('of no water in a slurry are refused where they are written', () => {
    const dry = withChange(
      smallFiles,
      'batches/EB-1.yaml',
      '    titrant: NA-1',
      '    titrant: NA-1\n    water: 0 mL'
    )
    expect(problemsOf(dry)).toContain(
      "INVALID_VALUE tests.free-acid.water: must be above 0, got '0 mL'"
    )
  })

  test('equal to those of another lot are doubted', () => {
    const copied = second.replace(
      /15\d mL|149 mL/gu,
      volume => ({ '150 mL': '130 mL', '149 mL': '128 mL', '152 mL': '133 mL' })[volume]!
    )
    expect(problemsOf(withFile(smallFiles, 'batches/EB-3.yaml', copied))).toContain(
      'COPIED_READINGS tests.expansion-volume.readings: these expansion volume readings equal those of EB-1 to the last digit'
    )
  })

  test('no workshop should meet are told in the words of the quantity', () => {
    const files = withChange(smallFiles, 'batches/EB-1.yaml', '130 mL', '1300 mL')
    expect(problemsOf(files)).toContainEqual(
      expect.stringMatching(
        /^IMPLAUSIBLE tests.expansion-volume: expansion volume comes to \d+(\.\d)? mL\/g, outside the usual 10 to 600/u
      )
    )
  })
})

test('the demo is evaluated the same from files in any order', () => {
  const backwards = evaluate([...demoFiles].reverse())
  const forwards = evaluate(demoFiles)
  for (const [lot, { product }] of forwards.lots)
    for (const [name, { estimate }] of Object.entries(product))
      expect(backwards.lots.get(lot)?.product[name as keyof typeof product]?.estimate.value).toBe(
        estimate.value
      )
})

test.each([
  ['21.00 g', []],
  [
    '21.01 g',
    ['IMPOSSIBLE_BALANCE product.mass: the lot weighs 21.01 g, more than the 20 g it was made from']
  ]
])('a lot made of 20 g of another may have taken up moisture, up to 5 %%: %s', (made, told) => {
  const text = `lot: EB-2
grade: FK-1
made: 2026-03-02
instruments: { mass: BAL-1 }
from:
  - { lot: EB-1, mass: 20.00 g }
product: { mass: ${made} }
`
  expect(problemsOf(withFile(smallFiles, 'batches/EB-2.yaml', text))).toEqual(told)
})
