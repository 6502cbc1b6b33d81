/** Which model computes which quantity, by which edition of which method, on which instruments. */

import { describe, expect, test } from 'vitest'
import { batchModels, expansionModels, foilModels } from '../../src/evaluate/models.ts'
import { panelModels } from '../../src/evaluate/panels.ts'
import { quantities, quantityNames } from '../../src/quantities.ts'
import { demoFiles, evaluate, problemsOf, smallFiles, withChange } from '../records-on-disk.ts'

const demo = evaluate(demoFiles)

describe('the table of models', () => {
  const tables = [batchModels, expansionModels, foilModels, panelModels].map(table =>
    Object.keys(table)
  )

  test('has one model for every quantity', () => {
    expect(tables.flat().sort()).toEqual([...quantityNames].sort())
  })

  test('is used whole by the demo: each quantity is computed for some lot, on its own side', () => {
    const panels = [...demo.panels.values()].map(({ results }) => results)
    const lots = [...demo.lots.values()]
    for (const side of ['product', 'process'] as const) {
      const beside = side === 'process' ? panels : []
      const computed = new Set([...lots.map(lot => lot[side]), ...beside].flatMap(Object.keys))
      const wanted = quantityNames.filter(name => quantities[name].side === side)
      expect([...computed].sort()).toEqual([...wanted].sort())
    }
  })

  test('files every result under its own quantity', () => {
    for (const { product, process } of demo.lots.values())
      for (const [name, result] of Object.entries({ ...product, ...process }))
        expect(result.quantity).toBe(name)
    for (const { results } of demo.panels.values())
      for (const [name, result] of Object.entries(results)) expect(result.quantity).toBe(name)
  })

  test('names units and bands that hold the demo', () => {
    expect(problemsOf(demoFiles)).toEqual([])
  })
})

describe('the edition of a method', () => {
  const edition = (lot: string) => {
    const method = demo.lots.get(lot)?.product.freeAcid_percent?.method
    return method && `${method.id} ${method.edition}`
  }

  test('is the one in force on the day of the test', () => {
    const tested = [...demo.lots.values()].flatMap(({ lot, product }) =>
      product.freeAcid_percent ? [[lot, product.freeAcid_percent.tested] as const] : []
    )
    expect(tested.length).toBeGreaterThan(8)
    for (const [lot, day] of tested)
      expect(edition(lot)).toBe(day! < '2026-06-01' ? 'TM-02 1' : 'TM-02 2')
    expect(new Set(tested.map(([lot]) => edition(lot))).size).toBe(2)
  })

  test('of a day before the first is a problem', () => {
    const files = withChange(smallFiles, 'methods/TM-1.yaml', '2026-01-01', '2026-02-05')
    expect(problemsOf(files)).toContain(
      'NO_VALID_REVISION tests.expansion-volume: method TM-1 has no edition valid on 2026-02-04'
    )
  })
})

describe('an instrument', () => {
  const dueOn = (day: string) =>
    withChange(smallFiles, 'instruments/CYL-1.yaml', 'due: 2028-01-05', `due: ${day}`)

  test('used after its calibration was due is noted, and keeps the lot from release', () => {
    const files = dueOn('2026-02-03')
    expect(evaluate(files).lots.get('EB-1')?.overdue).toEqual([
      {
        instrument: 'CYL-1',
        due: '2026-02-03',
        used: '2026-02-04',
        field: ['tests', 'expansionVolume']
      }
    ])
    expect(problemsOf(files)).toContain(
      'NOT_RELEASABLE status.0.is: cannot be released: CYL-1 was used on 2026-02-04, its calibration was due on 2026-02-03'
    )
  })

  test('is good for the whole day it is due', () => {
    expect(evaluate(dueOn('2026-02-04')).lots.get('EB-1')?.overdue).toEqual([])
  })

  test('cleared by what its next calibration found lets the lot go', () => {
    const cleared = (on: string) =>
      withChange(
        dueOn('2026-02-03'),
        'batches/EB-1.yaml',
        'status:',
        `as-found:\n  - { instrument: CYL-1, on: ${on}, found: within its tolerance, within: yes }\nstatus:`
      )
    const refusals = (on: string) =>
      problemsOf(cleared(on)).filter(line => line.includes('cannot be released'))
    expect(refusals('2026-02-06')).toEqual([])
    // Found before the use, or only after the release: neither clears it.
    expect(refusals('2026-02-03')).toHaveLength(1)
    expect(refusals('2026-02-07')).toHaveLength(1)
  })

  test('without calibration is told of, once a role', () => {
    const text =
      'calibration: { against: weighed water, on: 2026-01-05, due: 2028-01-05, tolerance: 1 mL }'
    const files = withChange(smallFiles, 'instruments/CYL-1.yaml', text, '')
    expect(problemsOf(files).filter(line => line.startsWith('NO_CALIBRATION tests'))).toEqual([
      'NO_CALIBRATION tests.expansion-volume: volume was read on CYL-1, which has no calibration: its error is not in the uncertainty'
    ])
  })
})

describe('a single reading', () => {
  const one = withChange(
    smallFiles,
    'batches/EB-1.yaml',
    '      - { mass: 0.498 g, volume: 128 mL }\n      - { mass: 0.503 g, volume: 133 mL }\n',
    ''
  )
  const warning =
    'SINGLE_READING tests.expansion-volume: expansion volume rests on one reading and no known repeatability: its scatter is not in the uncertainty'

  test('warns where the method states no repeatability', () => {
    const bare = withChange(
      one,
      'methods/TM-1.yaml',
      'repeatability: { s: 4 mL/g, df: 20, from: 7 lots }',
      ''
    )
    expect(problemsOf(bare)).toContain(warning)
  })

  test('does not where it does: the pooled scatter counts in full', () => {
    expect(problemsOf(one)).not.toContain(warning)
    const { estimate } = evaluate(one).lots.get('EB-1')!.product.expansionVolume_mL_per_g!
    const scatter = [...estimate.terms.values()].filter(({ cause }) => cause.kind === 'A')
    expect(scatter.map(({ u }) => u)).toEqual([4])
  })

  test('of pH is named by its abbreviation', () => {
    const files = withChange(
      smallFiles,
      'batches/EB-1.yaml',
      '  free-acid:\n',
      '  slurry-ph: { tested: 2026-02-05, readings: [2.95] }\n  free-acid:\n'
    )
    expect(problemsOf(files).filter(line => line.startsWith('SINGLE'))).toEqual([
      'SINGLE_READING tests.slurry-ph: pH of the slurry rests on one reading and no known repeatability: its scatter is not in the uncertainty'
    ])
  })
})
