/** Decisions, certificates and shipments that the records do not bear out. */

import { describe, expect, test } from 'vitest'
import type { SourceFile } from '../../src/problem.ts'
import { problemsOf, smallFiles, withChange, withFile } from '../records-on-disk.ts'

const release = '  - { is: released, on: 2026-02-06, by: quality manager }'

/** The batch with other decisions; nothing else is asked of it. */
const decided = (...decisions: readonly string[]): SourceFile[] =>
  withChange(
    smallFiles.filter(({ path }) => !/certificates|expansions|foils/u.test(path)),
    'batches/EB-1.yaml',
    release,
    decisions.map(decision => `  - { ${decision} }`).join('\n')
  )

const by = 'by: quality manager'

describe('a decision', () => {
  test.for([
    ['released on the day of the last test', [`is: released, on: 2026-02-05, ${by}`], []],
    [
      'released before the last test',
      [`is: released, on: 2026-02-04, ${by}`],
      ['DATE_ORDER status.0.on: was let go on 2026-02-04, before its last test on 2026-02-05']
    ],
    [
      'taken before the lot was made',
      [`is: quarantine, on: 2026-02-01, ${by}`],
      ['DATE_ORDER status.0.on: was decided on 2026-02-01, before the lot was made on 2026-02-02']
    ],
    [
      'rejected without a reason',
      [`is: rejected, on: 2026-02-06, ${by}`],
      ['MISSING_FIELD status.0.is: a lot that is rejected needs the reason']
    ],
    [
      'withdrawn though never let go',
      [`is: withdrawn, on: 2026-02-06, ${by}, because: doubt`],
      [
        'DATE_ORDER status.0.is: cannot be withdrawn from quarantine: only what was let go can be called back'
      ]
    ],
    [
      'held back and then withdrawn',
      [
        `is: released, on: 2026-02-06, ${by}`,
        `is: quarantine, on: 2026-02-07, ${by}`,
        `is: withdrawn, on: 2026-02-08, ${by}, because: doubt`
      ],
      []
    ],
    [
      'released again by way of quarantine',
      [
        `is: released, on: 2026-02-06, ${by}`,
        `is: withdrawn, on: 2026-02-07, ${by}, because: doubt`,
        `is: quarantine, on: 2026-02-08, ${by}`,
        `is: released, on: 2026-02-09, ${by}`
      ],
      ['DATE_ORDER status.3.is: cannot be released again once withdrawn: rework it into a new lot']
    ],
    [
      'a concession with nothing said',
      [`is: concession, on: 2026-02-06, ${by}`],
      ['MISSING_FIELD status.0.is: a concession needs customer, quantity, until, because']
    ],
    [
      'a concession in full',
      [
        `is: concession, on: 2026-02-06, ${by}, customer: Pell, quantity: 5 g, until: 2026-12-31, because: agreed`
      ],
      []
    ]
  ] as const)('%s', ([, decisions, problems]) => {
    expect(problemsOf(decided(...decisions))).toEqual(problems)
  })
})

describe('a release', () => {
  const releasable = decided(`is: released, on: 2026-02-06, ${by}`)
  const spoilt = (path: string, from: string, to: string) =>
    problemsOf(withChange(releasable, path, from, to))

  test.for([
    [
      'with a limit nobody measured',
      'grades/FK-1.yaml',
      'limits:',
      'limits:\n  moisture: { max: 1.0 % }',
      'NOT_RELEASABLE status.0.is: cannot be released: grade FK-1 limits moisture, which was not measured'
    ],
    [
      'with a limit not met',
      'grades/FK-1.yaml',
      '200 mL/g',
      '300 mL/g',
      'NOT_RELEASABLE status.0.is: cannot be released: the verdict on expansion volume is fail'
    ],
    [
      'with a check out of bounds',
      'batches/EB-1.yaml',
      'tested: 2026-02-04',
      'tested: 2026-02-04\n    checks: [{ what: check weight, found: 2 mg low, within: no }]',
      'NOT_RELEASABLE status.0.is: cannot be released: the check of the check weight was out of bounds on 2026-02-04'
    ]
  ] as const)('%s', ([, path, from, to, problem]) => {
    expect(spoilt(path, from, to)).toContain(problem)
  })

  test('within the limit by less than U is allowed: the certificate says so', () => {
    const guarded = withChange(
      releasable,
      'grades/FK-1.yaml',
      'limits:\n  expansion-volume: { min: 200 mL/g',
      'decision-rule: guarded\nlimits:\n  expansion-volume: { min: 259 mL/g'
    )
    expect(problemsOf(guarded)).toEqual([])
  })

  test('by a method so uncertain that nothing could pass is doubted', () => {
    const files = withChange(
      releasable,
      'grades/FK-1.yaml',
      'limits:\n  expansion-volume: { min: 200 mL/g',
      'decision-rule: guarded\nlimits:\n  expansion-volume: { min: 257 mL/g, max: 263 mL/g'
    )
    expect(problemsOf(files)).toEqual([
      'CANNOT_DECIDE tests.expansion-volume: the uncertainty of expansion volume leaves no value that could pass'
    ])
  })

  test('by another method than the grade names is told', () => {
    expect(
      spoilt('batches/EB-1.yaml', 'tested: 2026-02-04', 'tested: 2026-02-04\n    method: TM-4')
    ).toEqual([
      'METHOD_MISMATCH tests.expansion-volume: expansion volume was measured by TM-4, the grade names TM-1'
    ])
  })
})

describe('a decision is held to the grade of its day', () => {
  const released = decided(`is: released, on: 2026-02-06, ${by}`)
  const grade = released.find(({ path }) => path.endsWith('FK-1.yaml'))!.text
  const revised = (validFrom: string, min: string) =>
    grade
      .replace('revision: 1', 'revision: 2')
      .replace('valid-from: 2026-01-01', `valid-from: ${validFrom}`)
      .replace('min: 200 mL/g', `min: ${min}`)
  const regraded = (day: string, min: string) =>
    withFile(
      withChange(
        released,
        'batches/EB-1.yaml',
        'status:',
        `regraded:\n  - { to: FK-2, on: ${day}, by: quality manager, because: too coarse }\nstatus:`
      ),
      'grades/FK-2.yaml',
      grade.replace('id: FK-1', 'id: FK-2').replace('min: 200 mL/g', `min: ${min}`)
    )
  const refused =
    'NOT_RELEASABLE status.0.is: cannot be released: the verdict on expansion volume is fail'

  test.for([
    ['regraded after its release to what it does not meet', regraded('2026-02-07', '300 mL/g'), []],
    ['regraded before its release', regraded('2026-02-05', '300 mL/g'), [refused]],
    [
      'released against its first grade, regraded to one it meets',
      withChange(regraded('2026-02-07', '200 mL/g'), 'grades/FK-1.yaml', '200 mL/g', '300 mL/g'),
      [refused]
    ],
    [
      'of a grade revised after its release',
      withFile(released, 'grades/FK-1-r2.yaml', revised('2026-02-07', '300 mL/g')),
      []
    ],
    [
      'of a grade revised between its making and its release: it was made to the earlier one',
      withFile(released, 'grades/FK-1-r2.yaml', revised('2026-02-05', '300 mL/g')),
      []
    ],
    [
      'made to the later revision',
      withFile(released, 'grades/FK-1-r2.yaml', revised('2026-02-02', '300 mL/g')),
      [refused]
    ]
  ] as const)('a lot %s', ([, files, problems]) => {
    expect(problemsOf([...files])).toEqual(problems)
    // Seen from the day of release too: what comes later is not looked at, nor what was before forgotten.
    expect(problemsOf([...files], '2026-02-06')).toEqual(problems)
  })
})

describe('a certificate', () => {
  const certificate = (revision: number, issued: string, more = '') =>
    `number: CT-1\nrevision: ${revision}\nlot: EB-1\nissued: ${issued}\nsignatory: quality manager\n${more}`
  const issued = (...texts: readonly string[]) =>
    problemsOf(
      texts.reduce<SourceFile[]>(
        (files, text, index) => withFile(files, `certificates/${index}.yaml`, text),
        decided(`is: released, on: 2026-02-06, ${by}`)
      )
    )

  test.for([
    ['on the day of release', [certificate(1, '2026-02-06')], []],
    [
      'before release',
      [certificate(1, '2026-02-05')],
      ['NOT_CERTIFIABLE lot: certificate CT-1 is dated 2026-02-05, when EB-1 was in quarantine']
    ],
    [
      'revised with a reason',
      [certificate(1, '2026-02-06'), certificate(2, '2026-02-06', 'reason: a slip')],
      []
    ],
    [
      'revised without one',
      [certificate(1, '2026-02-06'), certificate(2, '2026-02-07')],
      ['NOT_CERTIFIABLE revision: revision 2 needs the reason it was made']
    ],
    [
      'with a revision missing',
      [certificate(1, '2026-02-06'), certificate(3, '2026-02-07', 'reason: a slip')],
      ['NOT_CERTIFIABLE revision: certificate CT-1 has no revision 2']
    ],
    [
      'dated before the one it replaces',
      [certificate(1, '2026-02-08'), certificate(2, '2026-02-07', 'reason: a slip')],
      ['NOT_CERTIFIABLE issued: is dated before revision 1']
    ]
  ] as const)('%s', ([, texts, problems]) => {
    expect(issued(...texts)).toEqual(problems)
  })

  test('stays with its lot', () => {
    const files = withFile(
      smallFiles,
      'certificates/CT-1-r2.yaml',
      certificate(2, '2026-02-15', 'reason: a slip').replace('EB-1', 'FL-1')
    )
    expect(problemsOf(files)).toEqual(['NOT_CERTIFIABLE lot: revision 1 of CT-1 is on EB-1'])
  })
})

describe('a shipment', () => {
  const sent = (day: string, customer: string, ...decisions: readonly string[]) =>
    problemsOf(
      withFile(
        decided(...decisions),
        'shipments/SH-1.yaml',
        `number: SH-1\nsent: ${day}\ncustomer: ${customer}\ncontents:\n  - { lot: EB-1, mass: 5 g }\n`
      )
    )
  const released = `is: released, on: 2026-02-06, ${by}`
  const concession = `is: concession, on: 2026-02-06, ${by}, customer: Pell, quantity: 5 g, until: 2026-03-31, because: agreed`

  test.for([
    ['2026-02-06', 'Pell', [released], undefined],
    ['2026-02-05', 'Pell', [released], 'EB-1 was in quarantine on 2026-02-05, when it was sent'],
    [
      '2026-02-08',
      'Pell',
      [released, `is: withdrawn, on: 2026-02-07, ${by}, because: doubt`],
      'EB-1 was withdrawn on 2026-02-08, when it was sent'
    ],
    ['2026-03-31', 'Pell', [concession], undefined],
    [
      '2026-03-31',
      'Marl',
      [concession],
      'EB-1 went to another customer than the one whose concession it has'
    ],
    [
      '2026-04-01',
      'Pell',
      [concession],
      'EB-1 was sent on 2026-04-01, after its concession ended on 2026-03-31'
    ]
  ] as const)('on %s to %s', ([day, customer, decisions, refusal]) => {
    expect(sent(day, customer, ...decisions)).toEqual(
      refusal ? [`NOT_SHIPPABLE contents.0.lot: ${refusal}`] : []
    )
  })

  test('that takes a lot beyond the quantity of its concession is refused, the one before it is not', () => {
    const shipment = (number: string, day: string, mass: string) =>
      `number: ${number}\nsent: ${day}\ncustomer: Pell\ncontents:\n  - { lot: EB-1, mass: ${mass} }\n`
    const both = withFile(
      withFile(decided(concession), 'shipments/SH-1.yaml', shipment('SH-1', '2026-03-03', '2 g')),
      'shipments/SH-2.yaml',
      shipment('SH-2', '2026-03-02', '4 g')
    )
    expect(problemsOf(both)).toEqual([
      'NOT_SHIPPABLE contents.0.lot: EB-1 was sent beyond its concession: 6 g of 5 g'
    ])
  })
})
