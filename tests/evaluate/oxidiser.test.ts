/** Oxidiser left in flake: told wherever it was dried or heated above the limit, or without a figure. */

import { describe, expect, test } from 'vitest'
import { problemsOf, smallFiles, withChange } from '../records-on-disk.ts'

/** The small workshop with a limit, its batch charged with permanganate. */
const limited = (since: string) =>
  withChange(
    withChange(smallFiles, 'batches/EB-1.yaml', 'SA-1, as: acid', 'SA-1, as: oxidiser'),
    'producer.yaml',
    'roles:',
    `oxidiser-limits: { since: ${since}, permanganate: 20 mg/kg }\nroles:`
  )

const tested = (concentration: string, on = '2026-02-03') =>
  withChange(
    limited('2026-01-01'),
    'batches/EB-1.yaml',
    'status:',
    `  residual-permanganate:
    tested: ${on}
    instruments: { volume: CYL-1 }
    extract: 100 mL
    readings:
      - { mass: 20.000 g, concentration: ${concentration} mg/L }
      - { mass: 20.000 g, concentration: ${concentration} mg/L }
status:`
  )

const told = (files: typeof smallFiles) =>
  problemsOf(files).filter(line => line.startsWith('OXIDISER_LEFT'))

describe('with a limit of 20 mg/kg', () => {
  test('a batch dried and heated without a figure is told twice, once where it was used', () => {
    expect(told(limited('2026-01-01'))).toEqual([
      'OXIDISER_LEFT steps.1.what: EB-1 was dried before its residual permanganate was known, which the workshop limits',
      'OXIDISER_LEFT from.0.lot: EB-1 was heated before its residual permanganate was known, which the workshop limits'
    ])
  })

  // 4.00 mg/L · 100 mL / 20 g = 20 mg/kg: the limit itself, so its uncertainty decides.
  test.for([
    ['3.50', 0],
    ['4.00', 2],
    ['8.00', 2]
  ] as const)('%s mg/L in the extract of 20 g is told %i times', ([concentration, times]) => {
    expect(told(tested(concentration))).toHaveLength(times)
  })

  test('a figure found after the furnace does not clear it', () => {
    expect(told(tested('0.50', '2026-02-28'))).toEqual([
      'OXIDISER_LEFT from.0.lot: EB-1 was heated before its residual permanganate was known, which the workshop limits'
    ])
  })

  test.for([
    ['0.50', '2026-02-03', []],
    ['8.00', '2026-02-03', ['may be up to 40.5 mg/kg']],
    ['0.50', '2026-02-28', ['was not known by 2026-02-06']]
  ] as const)(
    '%s mg/L, found on %s: held from release where %j',
    ([concentration, on, reasons]) => {
      const held = problemsOf(tested(concentration, on)).filter(line =>
        line.startsWith('NOT_RELEASABLE status.0.is: cannot be let go: its residual permanganate')
      )
      expect(held).toHaveLength(reasons.length)
      for (const reason of reasons) expect(held[0]).toContain(reason)
    }
  )

  test('an oxidiser charged under another name holds a batch from release as well', () => {
    const other = withChange(limited('2026-01-01'), 'batches/EB-1.yaml', 'as: oxidiser', 'as: acid')
    const held = (files: typeof smallFiles) =>
      problemsOf(files).filter(line => line.includes('cannot be let go: its residual permanganate'))
    expect(held(other)).toEqual([])
    const told = (substance: string) =>
      withChange(
        other,
        'materials/SA-1.yaml',
        'expires: 2027-01-31',
        `expires: 2027-01-31\ncomposition: [{ substance: ${substance}, fraction: 60 % }]`
      )
    expect(held(told('sulfuric acid'))).toEqual([])
    expect(held(told('nitric acid'))).toHaveLength(1)
  })

  test('holds from its day on, for batches that were charged with an oxidiser', () => {
    expect(told(limited('2026-02-03'))).toEqual([])
    const noOxidiser = withChange(limited('2026-01-01'), 'batches/EB-1.yaml', 'oxidiser', 'acid')
    expect(told(noOxidiser)).toEqual([])
  })
})
