/** What keeps goods from being sent: their age, and papers that did not go with them. */

import { describe, expect, test } from 'vitest'
import { judgeContent } from '../../src/pipeline.ts'
import { fieldText, type SourceFile } from '../../src/problem.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { base, edited } from '../records/workshop.ts'

const said = (files: readonly SourceFile[], day?: string): string[] =>
  judgeContent(files, day).problems.map(
    ({ code, field, message }) => `${code} ${fieldText(field)}: ${message}`
  )

/** The small workshop with some records in place of its own. */
function workshop(...files: readonly SourceFile[]): SourceFile[] {
  const paths = new Set(files.map(({ path }) => path))
  return [...base.filter(({ path }) => !paths.has(path)), ...files]
}

describe('a lot older than its grade trusts it', () => {
  const grade = (rule = 'simple'): SourceFile => ({
    path: 'grades/FK-1.yaml',
    text: `${edited('grades/FK-1.yaml').trimEnd()}\nretest-after-months: 3\nretest: [expansion-volume]\ndecision-rule: ${rule}\n`
  })
  const sent = (day: string): SourceFile => ({
    path: 'shipments/SH-1.yaml',
    text: `number: SH-1\nsent: ${day}\ncustomer: Brask Seals\ncontents:\n  - { lot: EB-1, mass: 5 g }\n`
  })
  const retested = (...results: readonly string[]): SourceFile => ({
    path: 'batches/EB-1.yaml',
    text: `${edited('batches/EB-1.yaml').trimEnd()}\nretested:\n${results
      .map(result => `  - ${result}\n`)
      .join('')}`
  })
  const good = '{ on: 2026-04-30, results: { expansion-volume: { value: 251 mL/g } } }'

  test('goes out to the last day, and not a day later', () => {
    expect(said(workshop(grade(), sent('2026-05-02')))).toEqual([])
    expect(said(workshop(grade(), sent('2026-05-03')))).toEqual([
      'NOT_SHIPPABLE contents › 1 › lot: EB-1 was sent on 2026-05-03, after it had to be tested again by 2026-05-02'
    ])
  })

  test('goes out again once tested, for as long from then', () => {
    expect(said(workshop(grade(), retested(good), sent('2026-07-30')))).toEqual([])
    expect(said(workshop(grade(), retested(good), sent('2026-07-31')))).toEqual([
      expect.stringContaining('tested again by 2026-07-30')
    ])
  })

  test.for([
    ['after the goods went', good.replace('04-30', '05-04'), ''],
    [
      'without a quantity that ages',
      '{ on: 2026-04-30, results: { free-acid: { value: 0.1 % } } }',
      ': the retest of 2026-04-30 does not give expansion volume'
    ],
    [
      'with a figure outside its limit',
      good.replace('251', '151'),
      ': the retest of 2026-04-30 found expansion volume to be 151 mL/g: fail'
    ]
  ] as const)('does not for a retest %s', ([, retest, because]) => {
    expect(said(workshop(grade(), retested(retest), sent('2026-05-03')))).toEqual([
      `NOT_SHIPPABLE contents › 1 › lot: EB-1 was sent on 2026-05-03, after it had to be tested again by 2026-05-02${because}`
    ])
  })

  test('needs the uncertainty where the grade decides by it', () => {
    const guarded = workshop(grade('guarded'), retested(good), sent('2026-05-03'))
    expect(said(guarded)).toEqual([expect.stringContaining('without its uncertainty')])
    const known = good.replace('251 mL/g', '251 mL/g, expanded-uncertainty: 9 mL/g')
    expect(said(workshop(grade('guarded'), retested(known), sent('2026-05-03')))).toEqual([])
  })
})

describe('a lot that misses a limit of the customer', () => {
  const part = (accepted: string): SourceFile => ({
    path: 'shipments/SH-1.yaml',
    text: `number: SH-1\nsent: 2026-03-02\ncustomer: Brask Seals\ncontents:\n  - lot: EB-1\n    mass: 5 g\n    limits: { expansion-volume: { min: 300 mL/g } }\n${accepted}`
  })

  test('goes where the customer took it beforehand', () => {
    const took = (day: string) =>
      part(`    accepted: { by: goods inward, on: ${day}, because: for a trial }\n`)
    expect(said(workshop(took('2026-03-01')))).toEqual([])
    expect(said(workshop(took('2026-03-03')))).toHaveLength(1)
  })

  test('is judged by the rule the customer asks for', () => {
    const at = (rule: string) =>
      said(workshop(part(`    decision-rule: ${rule}\n`))).map(line => line.split(': ').at(-1))
    expect(at('simple')).toEqual(['the verdict on expansion volume is fail'])
    const near = (rule: string) => ({
      path: 'shipments/SH-1.yaml',
      text: part(`    decision-rule: ${rule}\n`).text.replace('300', '259')
    })
    expect(said(workshop(near('simple')))).toEqual([])
    const { problems } = judgeContent(workshop(near('guarded')))
    expect(problems.map(({ code }) => code)).toEqual([])
  })
})

describe('safety data sheets', () => {
  /** The demo with one classified batch, and what was sent of it. */
  const few = demoFiles.filter(
    ({ path }) =>
      !/content\/(batches|expansions|foils|certificates|shipments|complaints|waste|incidents|panels)\//u.test(
        path
      ) || /(EB-26-001|SH-26-01)\.yaml$/u.test(path)
  )
  const change = (from: string, to: string) => withChange(few, 'shipments/SH-26-01.yaml', from, to)
  const first = '  - { sheet: SDS-01, revision: 1, language: English, sent: 2026-02-10 }\n'
  const second = '  - { sheet: SDS-01, revision: 2, language: English, sent: 2026-09-02 }\n'

  test('went with the goods', () => {
    expect(said(few)).toEqual([])
  })

  test('are needed for a classified lot by the day it goes', () => {
    for (const to of ['', first.replace('02-10', '02-11')])
      expect(said(change(first, to))).toEqual([
        'NOT_SHIPPABLE contents › 1 › lot: EB-26-001 has a hazard classification and went without a safety data sheet'
      ])
  })

  test('are not needed for a lot that has no class', () => {
    const text =
      'number: SH-1\nsent: 2026-03-02\ncustomer: B\ncontents:\n  - { lot: EB-1, mass: 5 g }\n'
    expect(said(workshop({ path: 'shipments/SH-1.yaml', text }))).toEqual([])
  })

  test('are of the revision in force', () => {
    const late = withChange(
      change('sent: 2026-02-10\ncustomer', 'sent: 2026-09-01\ncustomer'),
      'shipments/SH-26-01.yaml',
      second,
      ''
    )
    expect(said(late)).toEqual([
      'NOT_SHIPPABLE contents › 1 › lot: EB-26-001 has a hazard classification and went with revision 1 of SDS-01, when revision 2 was in force since 2026-09-01'
    ])
  })

  test('of a later revision are owed to whom was supplied in the year before', () => {
    const owed =
      'SHEET_OWED safety-data-sheets › 2 › revision: revision 2 of SDS-01 is not yet with Velmarrow Seals (SH-26-01), supplied in the 12 months before it'
    expect(said(change(second, ''), '2026-09-01')).toEqual([owed])
    const [warning] = judgeContent(change(second, ''), '2026-09-01').problems
    expect(warning?.code).toBe('SHEET_OWED')
    expect(said(change(second, ''), '2026-08-31')).toEqual([])
    expect(said(few, '2026-09-01')).toEqual([owed])
    const later = withChange(
      change(second, ''),
      'producer.yaml',
      'valid-from: 2026-09-01',
      'valid-from: 2027-02-11'
    )
    expect(said(later, '2027-02-11')).toEqual([])
  })

  test('stand once each in the producer’s record, from a day on', () => {
    const twice = withChange(few, 'producer.yaml', 'revision: 2', 'revision: 1')
    expect(said(twice)).toContain(
      'DUPLICATE_ID safety-data-sheets › 2 › revision: revision 1 of SDS-01 is there twice'
    )
    expect(
      said(
        change(
          'revision: 2, language: English, sent: 2026-09-02',
          'revision: 2, language: English, sent: 2026-08-31'
        )
      )
    ).toEqual([
      expect.stringMatching(
        /^DATE_ORDER .*was sent on 2026-08-31, before revision 2 of SDS-01 of 2026-09-01/u
      )
    ])
  })
})

test('what came back in a container came in one of the shipment', () => {
  const shipment = {
    path: 'shipments/SH-1.yaml',
    text: 'number: SH-1\nsent: 2026-03-02\ncustomer: B\ncontents:\n  - lot: EB-1\n    mass: 5 g\n    containers: [{ number: C-1, kind: jar, tare: 30 g, net: 5 g }]\n'
  }
  const complaint = (container: string) => ({
    path: 'complaints/CP-1.yaml',
    text: `number: CP-1\nshipment: SH-1\nlot: EB-1\nreceived: 2026-03-03\nreported: torn\nreturned: [{ on: 2026-03-04, container: ${container}, mass: 5 g }]\n`
  })
  expect(said(workshop(shipment, complaint('C-1')))).toEqual([])
  expect(said(workshop(shipment, complaint('C-9')))).toEqual([
    "UNKNOWN_REFERENCE returned › 1 › container: there is no such container in the shipment 'C-9'"
  ])
})
