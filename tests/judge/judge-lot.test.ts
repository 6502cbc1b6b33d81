/** A lot against its grade: which limits, which scope, which revision. */

import { describe, expect, test } from 'vitest'
import { boundsOf } from '../../src/judge/judge-lot.ts'
import type { JudgedLot } from '../../src/judge/types.ts'
import { judgeContent } from '../../src/pipeline.ts'
import type { SourceFile } from '../../src/problem.ts'
import type { Limit } from '../../src/records/schemas/grade.ts'
import { smallFiles, withChange, withFile } from '../records-on-disk.ts'

const judged = (files: readonly SourceFile[], lot: string, asOf?: string): JudgedLot => {
  const { lots, problems } = judgeContent(files, asOf)
  const found = lots.find(({ evaluated }) => evaluated.lot === lot)
  if (!found) throw new Error(problems.map(({ message }) => message).join('\n'))
  return found
}

const rowOf = (lot: JudgedLot, quantity: string) => {
  const row = lot.rows.find(candidate => candidate.quantity === quantity)
  if (!row) throw new Error(`no row of ${quantity}`)
  return row
}

describe('bounds', () => {
  const reading = (decimal: string) => ({
    value: Number(decimal),
    resolution: 1,
    decimal,
    written: decimal
  })

  test.for([
    ['1.00', '0.06', '0.94', '1.06'],
    ['1.0', '0.06', '0.94', '1.06'],
    ['1.000', '0.1', '0.900', '1.100'],
    ['0.7', '0.1', '0.6', '0.8'],
    ['100', '5', '95', '105']
  ] as const)(
    '%s ± %s are %s to %s, exact and with the finer digits',
    ([target, tol, min, max]) => {
      const limit = { target: reading(target), tolerance: reading(tol) } as Limit
      expect(boundsOf(limit)).toEqual({ min, max })
    }
  )

  test('keep the digits they were written with', () => {
    expect(boundsOf({ min: reading('0.50') } as Limit)).toEqual({ min: '0.50' })
    expect(boundsOf({ max: reading('36000') } as Limit)).toEqual({ max: '36000' })
  })
})

describe('a limit on every sheet', () => {
  /** The foil with its limit held to another scope. */
  const scoped = (scope: string, tolerance = '0.10') =>
    withChange(
      smallFiles,
      'grades/FF-1.yaml',
      'tolerance: 0.10 g/cm³, of: every sheet',
      `tolerance: ${tolerance} g/cm³, of: ${scope}`
    )

  test('is judged by the sheet least sure to conform', () => {
    const row = rowOf(judged(scoped('every sheet'), 'FL-1'), 'foilDensity_g_per_cm3')
    expect(row.verdict?.word).toBe('pass')
    expect(row.worst).toMatchObject({ label: 'sheet b', count: 2 })
  })

  test('fails for one sheet where the mean passes', () => {
    // Sheet a: 5.010 / (10.002 · 10.005 · 0.05003333) = 1.00063 g/cm³; sheet b:
    // 4.985 / (9.996 · 10.001 · 0.0499) = 0.99930 g/cm³; their mean 0.999965.
    const narrow = '0.0003'
    const [each, mean] = (['every sheet', 'lot mean'] as const).map(scope =>
      rowOf(judged(scoped(scope, narrow), 'FL-1'), 'foilDensity_g_per_cm3')
    )
    expect(each?.verdict?.word).toBe('fail')
    expect(each?.worst?.value).toBeCloseTo(1.00063, 5)
    expect(mean?.verdict?.word).toBe('pass')
    expect(mean?.worst).toBeUndefined()
    expect(mean?.result?.estimate.value).toBeCloseTo(0.999965, 6)
  })

  test('names the farthest out where several are surely out', () => {
    const heavy = withChange(
      withChange(scoped('every sheet'), 'foils/FL-1.yaml', '5.010 g', '8.010 g'),
      'foils/FL-1.yaml',
      '4.985 g',
      '9.985 g'
    )
    const row = rowOf(judged(heavy, 'FL-1'), 'foilDensity_g_per_cm3')
    expect(row.verdict).toMatchObject({ word: 'fail', probability: 0 })
    expect(row.worst?.label).toBe('sheet b')
  })

  test('and on every reading goes down to the positions', () => {
    const files = withChange(
      smallFiles,
      'grades/FF-1.yaml',
      'limits:',
      'limits:\n  thickness: { min: 0.4965 mm, max: 0.52 mm, of: every reading }'
    )
    const row = rowOf(judged(files, 'FL-1'), 'thickness_mm')
    expect(row.verdict?.word).toBe('fail')
    expect(row.worst).toMatchObject({ label: 'sheet b, position 2', value: 0.496, count: 6 })
  })
})

describe('the word on a lot', () => {
  const limited = (limits: string) =>
    withChange(
      smallFiles,
      'grades/FK-1.yaml',
      '  expansion-volume: { min: 200 mL/g, method: TM-1 }\n  free-acid: { max: 0.20 %, method: TM-2 }',
      limits
    )

  test.for([
    ['  expansion-volume: { min: 200 mL/g }', 'pass'],
    ['  expansion-volume: { min: 300 mL/g }', 'fail'],
    ['  expansion-volume: { min: 200 mL/g }\n  moisture: { max: 1 % }', 'not judged'],
    ['  expansion-volume: { min: 300 mL/g }\n  moisture: { max: 1 % }', 'fail'],
    ['  moisture: { max: 1 % }', 'not judged']
  ] as const)('%s: %s', ([limits, word]) => {
    expect(judged(limited(limits), 'EB-1').word).toBe(word)
  })

  test('has a row for what is limited and not measured, and for what is measured only', () => {
    const { rows } = judged(limited('  moisture: { max: 1 % }'), 'EB-1')
    expect(
      rows.map(({ quantity, result, limit, verdict }) => [quantity, !!result, !!limit, !!verdict])
    ).toEqual([
      ['expansionVolume_mL_per_g', true, false, false],
      ['freeAcid_percent', true, false, false],
      ['freeAcid_mmol_per_g', true, false, false],
      ['moisture_percent', false, true, false]
    ])
  })
})

test('a limit on a figure of the process is refused: such figures stay in the workshop', () => {
  const files = withChange(
    smallFiles,
    'grades/FK-1.yaml',
    'limits:',
    'limits:\n  mass-yield: { min: 100 % }'
  )
  expect(() => judged(files, 'EB-1')).toThrow('is a process figure')
})

describe('the grade', () => {
  const later = (validFrom: string) =>
    withFile(
      smallFiles,
      'grades/FK-1-r2.yaml',
      smallFiles
        .find(({ path }) => path.endsWith('FK-1.yaml'))!
        .text.replace('revision: 1', 'revision: 2')
        .replace('2026-01-01', validFrom)
        .replace('200 mL/g', '300 mL/g')
    )

  test.for([
    ['2026-02-02', 2, 'fail'],
    ['2026-02-03', 1, 'pass']
  ] as const)(
    'valid from %s: revision %i judges what was made on 2 February',
    ([from, rev, word]) => {
      const lot = judged(later(from), 'EB-1')
      expect([lot.grade.revision, lot.word]).toEqual([rev, word])
    }
  )

  test('a lot was regraded to judges it from that day on', () => {
    const other = smallFiles
      .find(({ path }) => path.endsWith('FK-1.yaml'))!
      .text.replace('FK-1', 'FK-2')
      .replace('200 mL/g', '300 mL/g')
    const files = withChange(
      withFile(smallFiles, 'grades/FK-2.yaml', other),
      'batches/EB-1.yaml',
      'status:',
      'regraded:\n  - { to: FK-2, on: 2026-03-01, by: quality manager, because: too coarse }\nstatus:'
    )
    expect(judged(files, 'EB-1', '2026-02-28').grade.id).toBe('FK-1')
    expect(judged(files, 'EB-1', '2026-03-01').grade.id).toBe('FK-2')
    expect(judged(files, 'EB-1').grade.id).toBe('FK-2')
    const back = 'regraded:\n  - { to: FK-2, on: 2026-03-02, by: quality manager, because: b }\n'
    const listedLast = withChange(files, 'batches/EB-1.yaml', 'regraded:\n', back)
    const outOfOrder = withChange(
      listedLast,
      'batches/EB-1.yaml',
      'to: FK-2, on: 2026-03-01',
      'to: FK-1, on: 2026-03-01'
    )
    expect(judged(outOfOrder, 'EB-1').grade.id).toBe('FK-2')
    expect(judged(files, 'EB-1', '2026-03-01').word).toBe('fail')
  })
})
