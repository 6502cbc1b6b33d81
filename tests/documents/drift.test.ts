/** Records against what was issued: each kind of difference is told, and nothing else is. */

import { describe, expect, test } from 'vitest'
import { problemData } from '../../src/problem.ts'
import type { SourceFile } from '../../src/problem.ts'
import { fingerprint } from '../../src/register/fingerprint.ts'
import { base, edited, withFile } from '../records/workshop.ts'
import {
  first,
  firstText,
  issuedRegister,
  problemsOf,
  registerOf,
  registerSaying,
  textToIssue
} from './issuing.ts'

const batch = 'batches/EB-1.yaml'
const order = 'certificates/CT-1.yaml'

const changed = (path: string, ...replacements: (readonly [string, string])[]) =>
  withFile(path, edited(path, ...replacements))

/** Problems as 'file field CODE'. */
const told = (files: readonly SourceFile[], register = issuedRegister, asOf?: string) =>
  problemsOf(files, register, asOf).map(problem => {
    const { file, code } = problemData(problem)
    return `${file} ${problem.field.join('.')} ${code}`
  })

const differs = `${order} number CERTIFICATE_DIFFERS`

/** Message of the one certificate that differs. */
function messageOf(files: readonly SourceFile[]): string {
  const found = problemsOf(files, issuedRegister).filter(
    ({ code }) => code === 'CERTIFICATE_DIFFERS'
  )
  expect(found).toHaveLength(1)
  expect(found[0]!.hint).toContain('npm run issue -- EB-1 --reason "..."')
  return found[0]!.message
}

test('the register is sound, and the records say what was issued', () => {
  expect(issuedRegister.problems).toEqual([])
  expect(told(base)).toEqual([])
})

describe('a certificate that stands is told to differ by', () => {
  // What the sentence names, and a change of the records that makes it.
  test.for([
    ['a figure', batch, 'volume: 133', 'volume: 139', 'Expansion volume, result: was 26'],
    [
      'its U alone',
      'methods/TM-2.yaml',
      's: 0.002 %',
      's: 0.004 %',
      '± 0.0031\u00a0%, now 0.0625\u00a0% ± 0.0062'
    ],
    [
      'a limit',
      'grades/FK-1.yaml',
      'min: 200',
      'min: 210',
      ', limit: was ≥ 200 (lot mean), now ≥ 210'
    ],
    [
      'a method',
      'methods/TM-1.yaml',
      '950 °C',
      '960 °C',
      ', method: was TM-1 edition 1; 0.5\u00a0g at 950\u00a0°C'
    ],
    [
      'the day of a test',
      batch,
      'tested: 2026-02-04',
      'tested: 2026-02-03',
      ', tested: was 4 February 2026'
    ],
    ['a fact', batch, 'made: 2026-02-02', 'made: 2026-02-01', 'now 1 February 2026'],
    ['the address', 'producer.yaml', '2 Kiln', '3 Kiln', 'Producer: was Fennick'],
    ['the signatory', order, 'signatory: quality manager', 'signatory: owner', 'Signatory: was '],
    [
      'the day of issue',
      order,
      '2026-02-07',
      '2026-02-08',
      'Issued: was 7 February 2026, now 8 February 2026'
    ]
  ] as const)('%s', ([, path, found, put, says]) => {
    const producer = edited('producer.yaml', [
      'roles:',
      'roles:\n  - { role: owner, name: Odile Varnholt }'
    ])
    const files = changed(path, [found, put]).map(file =>
      file.path === 'producer.yaml' && put.includes('owner') ? { ...file, text: producer } : file
    )
    expect(told(files)).toEqual([differs])
    expect(messageOf(files)).toContain(says)
  })

  test('its lot being gone, or its order, told at the producer', () => {
    const gone = 'producer.yaml name CERTIFICATE_DIFFERS'
    expect(told(base.filter(({ path }) => path !== order))).toEqual([gone])
    const kept = ['batches/', 'certificates/', 'expansions/', 'foils/']
    const noLots = base.filter(({ path }) => !kept.some(folder => path.startsWith(folder)))
    expect(told(noLots)).toEqual([gone])
    expect(problemsOf(noLots, issuedRegister)[0]!.message).toBe(
      'certificate CT-1 revision 1 on EB-1 was issued, and the records no longer have it or its lot'
    )
  })

  test('five things (acid stands in two units), of which three are told', () => {
    const text = edited(
      batch,
      ['volume: 133', 'volume: 139'],
      ['tested: 2026-02-04', 'tested: 2026-02-03'],
      ['tested: 2026-02-05', 'tested: 2026-02-04'],
      ['made: 2026-02-02', 'made: 2026-02-01']
    )
    expect(messageOf(withFile(batch, text))).toMatch(/, now 3 February 2026\. And 2 more$/u)
  })
})

describe('not told is', () => {
  test('what a reader of the certificate cannot see', () => {
    expect(told(changed('materials/GR-1.yaml', ['received', '# kept\nreceived']))).toEqual([])
    expect(told(changed(batch, ['100.00 g', '100.01 g']))).toEqual([])
  })

  test('a space that may no longer end a line', async () => {
    const wide = firstText.replaceAll('\u00a0', ' ')
    expect(wide).not.toBe(firstText)
    const register = await registerSaying(wide)
    expect(register.problems).toEqual([])
    expect(told(base, register)).toEqual([])
  })

  test('a difference as of a day before the issue', () => {
    const files = changed(batch, ['volume: 133', 'volume: 139'])
    expect(told(files, issuedRegister, '2026-02-06')).not.toContain(differs)
    expect(told(files, issuedRegister, '2026-02-07')).toContain(differs)
  })

  test('a withdrawn one, nor one its correction took the place of', async () => {
    const files = changed(batch, ['volume: 133', 'volume: 139'])
    const withdrawn = await registerOf({ 'CT-1-r1.json': firstText }, first, [
      [{ is: 'withdrawn', number: 'CT-1', revision: 1, reason: 'misread' }],
      '2026-02-10'
    ])
    expect(withdrawn.problems).toEqual([])
    expect(told(files, withdrawn)).toEqual([])

    const second = {
      path: 'certificates/CT-1-r2.yaml',
      text: `${edited(order, ['revision: 1', 'revision: 2'])}reason: a volume was misread\n`
    }
    const corrected = [...files, second]
    const text = textToIssue(corrected, issuedRegister)
    const amended = await registerOf({ 'CT-1-r1.json': firstText, 'CT-1-r2.json': text }, first, [
      [
        {
          is: 'amended',
          number: 'CT-1',
          revision: 2,
          lot: 'EB-1',
          data: await fingerprint(text),
          reason: 'a volume was misread'
        }
      ],
      '2026-02-07'
    ])
    expect(amended.problems).toEqual([])
    expect(told(corrected, amended)).toEqual([])
    // The records as they were: now it is the correction that differs.
    expect(told([...base, second], amended)).toEqual([
      'certificates/CT-1-r2.yaml number CERTIFICATE_DIFFERS'
    ])
  })
})

describe('a certificate on a lot', () => {
  const called = '  - { is: withdrawn, on: 2026-02-20, by: quality manager, because: acid rises }\n'
  const calledBack = base.map(file =>
    file.path === batch ? { ...file, text: `${file.text}${called}` } : file
  )
  const stands = `${order} lot CERTIFICATE_STANDS`

  test('called back is said to stand, from that day on, until it is withdrawn', async () => {
    expect(told(calledBack)).toContain(stands)
    expect(told(calledBack)).not.toContain(differs)
    expect(told(calledBack, issuedRegister, '2026-02-19')).not.toContain(stands)
    const problem = problemsOf(calledBack, issuedRegister).find(
      ({ code }) => code === 'CERTIFICATE_STANDS'
    )!
    expect(problem.message).toBe('certificate CT-1 still stands, though EB-1 is withdrawn')
    expect(problem.hint).toContain('npm run withdraw -- CT-1 --reason "..."')
    const withdrawn = await registerOf({ 'CT-1-r1.json': firstText }, first, [
      [{ is: 'withdrawn', number: 'CT-1', revision: 1, reason: 'acid rises' }],
      '2026-02-20'
    ])
    expect(told(calledBack, withdrawn)).not.toContain(stands)
  })

  test('that is released is not', () => {
    expect(told(base)).not.toContain(stands)
  })
})

describe('nothing is said of certificates where nothing is known of them', () => {
  const other = changed(batch, ['volume: 133', 'volume: 139'])

  test('beside a register with faults, which are told alone', async () => {
    const spoilt = await registerOf({ 'CT-1-r1.json': firstText }, first)
    const fault = { ...problemsOf(other, issuedRegister)[0]!, code: 'REGISTER_CHAIN' } as const
    const codes = problemsOf(other, { ...spoilt, problems: [fault] }).map(({ code }) => code)
    expect(codes).toContain('REGISTER_CHAIN')
    expect(codes).not.toContain('CERTIFICATE_DIFFERS')
  })

  test('where lots go round in a circle, so that none is judged', () => {
    const circle = `lot: EB-2
grade: FK-1
made: 2026-03-02
instruments: { mass: BAL-1 }
from:
  - { lot: EB-2, mass: 20.00 g }
product: { mass: 20.00 g }
`
    const codes = problemsOf(withFile('batches/EB-2.yaml', circle), issuedRegister).map(
      ({ code }) => code
    )
    expect(codes).toEqual(['LOT_CYCLE'])
  })
})
