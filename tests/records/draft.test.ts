import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parseRecord } from '../../src/records/document.ts'
import { draftFrom, headOf, nextNumber, numberFault } from '../../src/records/draft.ts'
import { type DraftKind, draftKinds, numberFields } from '../../src/records/draft-fields.ts'
import { firstRecord } from '../../src/records/first-record.ts'
import { validateRecord } from '../../src/records/validate.ts'
import { fullRecord } from './full-record.ts'

const recordsOf = (folder: string) =>
  readdirSync(join('content', folder)).map(name => ({
    path: `content/${folder}/${name}`,
    text: readFileSync(join('content', folder, name), 'utf8')
  }))

const everyRecord = (Object.entries(draftKinds) as [DraftKind, string][]).flatMap(
  ([kind, folder]) => recordsOf(folder).map(file => ({ kind, file, name: file.path }))
)

const commentsOf = (text: string) => text.match(/(?<=^|\s)#.*$/gmu) ?? []

/** Fields of a tree by path, without what is blank. */
const pathsOf = (value: unknown, path = ''): string[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, part]) => pathsOf(part, `${path}/${key}`))
    : [path]

const dataOf = (text: string) => {
  const parsed = parseRecord({ path: 'x.yaml', text })
  if (!parsed.ok) throw new Error(parsed.problems.map(({ message }) => message).join('; '))
  return parsed.value.data as Record<string, unknown>
}

test.for(everyRecord)(
  '$name makes a new $kind that is YAML and keeps its comments',
  ({ kind, file }) => {
    const text = draftFrom(file, kind, { lot: 'NEW-1' })
    expect(commentsOf(text)).toEqual(commentsOf(file.text))
    const data = dataOf(text)
    const old = new Set(pathsOf(dataOf(file.text)))
    expect(pathsOf(data).filter(path => !old.has(path) && path !== '/draft')).toEqual([])
  }
)

test.for(['batch', 'expansion', 'foil'] as const)(
  'a new %s holds no reading of the old one',
  kind => {
    for (const file of recordsOf(draftKinds[kind])) {
      const text = draftFrom(file, kind, { lot: 'NEW-1', made: '2026-12-01' })
      const plan = /^ {2}(plan|increments):.*$/gmu
      expect(text.replace(plan, '').match(/\d[\d.]* ?(g|mL|mm|°C|s|MPa)\b/gu), text).toBeNull()
      expect(dataOf(text)).toMatchObject({ lot: 'NEW-1', made: '2026-12-01', draft: 'yes' })
      expect(dataOf(text)).not.toHaveProperty('status')
    }
  }
)

test('a grade is begun as its like stands, under the new name', () => {
  const [grade] = recordsOf('grades')
  const text = draftFrom(grade!, 'grade', {
    id: 'flake-9',
    revision: '1',
    'valid-from': '2026-12-01'
  })
  const parsed = parseRecord({ path: 'content/grades/flake-9-r1.yaml', text })
  expect(parsed.ok && validateRecord(parsed.value, 'grades').problems).toEqual([])
  expect(dataOf(text)).toMatchObject({ id: 'flake-9', limits: dataOf(grade!.text).limits })
})

test('an instrument keeps what it is, and nothing of the other one’s calibration', () => {
  const text = [
    'id: BAL-1',
    'title: Balance',
    'resolution: 0.1 mg',
    'calibration:',
    '  certificate: C-1',
    '  laboratory: Lab',
    '  on: 2026-01-08',
    '  due: 2027-01-08',
    '  expanded-uncertainty: 0.3 mg',
    '  coverage-factor: 2',
    ''
  ].join('\n')
  expect(dataOf(draftFrom({ path: 'x.yaml', text }, 'instrument', { id: 'BAL-2' }))).toEqual({
    id: 'BAL-2',
    title: 'Balance',
    resolution: '0.1 mg',
    calibration: { laboratory: 'Lab', 'coverage-factor': '2' }
  })
})

test('a material keeps what it consists of, a foil no sheet’s name', () => {
  const material = {
    path: 'x.yaml',
    text: 'composition:\n  - { substance: acid, fraction: 96 % }\n'
  }
  expect(draftFrom(material, 'material', {})).toContain('- { substance: acid, fraction: }')
  const foil = { path: 'x.yaml', text: 'sheets:\n  - id: 14-1\n    mass: 5 g\n' }
  expect(draftFrom(foil, 'foil', {})).toBe('sheets:\n  - id:\n    mass:\n')
})

const kinds = Object.keys(draftKinds) as DraftKind[]

/** What is wrong with a text as a record of the kind, but what is left to fill in. */
function faultsOf(kind: DraftKind, text: string): string[] {
  const parsed = parseRecord({ path: `content/${draftKinds[kind]}/NEW-1.yaml`, text })
  const { problems } = parsed.ok ? validateRecord(parsed.value, draftKinds[kind]) : parsed
  return problems
    .filter(({ code }) => code !== 'MISSING_FIELD')
    .map(({ code, field, message }) => `${code} ${field.join('.')}: ${message}`)
}

describe.for(kinds)('of a %s that has every field there is', kind => {
  const text = fullRecord(draftKinds[kind])
  const number = numberFields[kind]
  const next = draftFrom({ path: 'x.yaml', text }, kind, {
    [number]: 'NEW-1',
    ...(text.includes('\nmade:') ? { made: '2026-12-01' } : {})
  })

  test('the example has every field', () => {
    // Values that contradict each other, as every field has the same.
    const grave = faultsOf(kind, text).filter(
      fault => !/^(INVALID_VALUE|DATE_ORDER|WRONG_DIMENSION) /u.test(fault)
    )
    expect(grave).toEqual([])
    expect(text.split('\n').length).toBeGreaterThan(4)
  })

  test('the next one is a record with nothing but blanks to fill in', () => {
    const before = faultsOf(kind, text)
    expect(faultsOf(kind, next).filter(fault => !before.includes(fault))).toEqual([])
    expect(dataOf(next)[number]).toBe('NEW-1')
  })

  test('it keeps the comment of every field it keeps, and the order', () => {
    const named = (one: string): string[] => one.match(/[\w-]+(?=:.*# of)/gu) ?? []
    for (const line of next.split('\n').filter(one => /^ *(- )*[\w-]+:/u.test(one)))
      if (!/^(draft|made)/u.test(line)) expect(line).toMatch(/# of /u)
    let at = 0
    const before = named(text)
    for (const field of named(next)) {
      at = before.indexOf(field, at) + 1
      expect(at, field).toBeGreaterThan(0)
    }
  })
})

test.for([
  ['batch', ['vessel:', 'plan:'], ['hazards:', 'status:', 'reported:', 'counted:']],
  ['material', ['supplier:', 'reference:', 'class:'], ['counted:', 'notes:']],
  ['instrument', ['distribution:'], ['earlier-calibrations:']],
  ['shipment', ['origin:', 'tariff-code:'], ['limits:', 'decision-rule:', 'accepted:']],
  ['complaint', ['reported:'], ['told:', 'returned:', 'decision:']],
  ['mapping', ['column:', 'to:'], []]
] as const)('a new %s keeps %j, and has no %j', ([kind, stays, goes]) => {
  const next = draftFrom({ path: 'x.yaml', text: fullRecord(draftKinds[kind]) }, kind, {})
  const has = (field: string) => new RegExp(`^[ -]*${field}`, 'mu').test(next)
  expect([stays.filter(field => !has(field)), goes.filter(has)]).toEqual([[], []])
})

test('a complaint begins with nothing of what was said before', () => {
  const next = draftFrom(recordsOf('complaints')[0]!, 'complaint', {
    number: 'CP-9',
    received: '2026-12-01'
  })
  expect(dataOf(next)).toEqual({ number: 'CP-9', received: '2026-12-01' })
})

describe.for(kinds)('the first %s of a workshop', kind => {
  const { number, text } = firstRecord(kind)

  test('is blank, and a record once it is filled in', () => {
    expect(faultsOf(kind, text)).toEqual([])
    expect(numberFault(number)).toBeUndefined()
    expect(text.replace(/^#.*\n/u, '').replace(/[\w-]+:/gu, '')).toMatch(/^[\s{},-]+$/u)
  })

  test('has every field it must have', () => {
    const parsed = parseRecord({ path: `content/${draftKinds[kind]}/X.yaml`, text: '{}' })
    const wanted = parsed.ok ? validateRecord(parsed.value, draftKinds[kind]).problems : []
    expect(wanted.length).toBeGreaterThan(2)
    for (const { field } of wanted) expect(text).toMatch(new RegExp(`^${String(field[0])}:`, 'mu'))
  })
})

describe('what a record says of itself', () => {
  test.for([
    ['lot: EB-1\ndraft: yes\n', 'batch', { number: 'EB-1', draft: true }],
    ['lot: EB-1\ndraft: no\n', 'batch', { number: 'EB-1', draft: false }],
    ['id: BAL-1\nlot: EB-1\n', 'instrument', { number: 'BAL-1', draft: false }],
    ['number: SH-1\n', 'shipment', { number: 'SH-1', draft: false }],
    ['lot:\n', 'batch', { number: 'file', draft: false }],
    ['- list\n', 'batch', { number: 'file', draft: false }],
    ['nothing: [\n', 'batch', { number: 'file', draft: false }]
  ] as const)('%j as a %s', ([text, kind, expected]) => {
    expect(headOf({ path: 'content/some/file.yaml', text }, kind)).toEqual(expected)
  })
})

test.for(['../evil', 'EB 1', '', 'a/b', 'con', '-1', 'x'.repeat(41)])(
  '%j can number no record',
  number => {
    expect(numberFault(number)).toMatch(/^must be 1 to 40 letters/u)
  }
)

test.for(['EB-26-001', '7', 'a.b_c'])('%j can', number => {
  expect(numberFault(number)).toBeUndefined()
})

test('a draft already there is not marked twice', () => {
  const file = {
    path: 'x.yaml',
    text: 'lot: A-1\nmade: 2026-01-01\ndraft: yes\nproduct: { mass: 5 g }\n'
  }
  expect(draftFrom(file, 'batch', { lot: 'A-2', made: '2026-01-02' })).toBe(
    'lot: A-2\nmade: 2026-01-02\ndraft: yes\nproduct: { mass: }\n'
  )
})

test('what belongs to the old lot is cut out of a group on one line too', () => {
  const file = { path: 'x.yaml', text: 'lot: A-1\nsampling: { notes: x, plan: all, by: Q }\n' }
  expect(draftFrom(file, 'batch', { lot: 'A-2' })).toBe('lot: A-2\nsampling: { plan: all, by: }\n')
})

describe('the next number follows the workshop’s own pattern', () => {
  test.for([
    [['EB-26-001', 'EB-26-014'], 'EB-26-015'],
    [['EB-26-099'], 'EB-26-100'],
    [['EB-25-120', 'EB-26-003'], 'EB-26-004'],
    [['A9', 'A10'], 'A11'],
    [['7'], '8'],
    [['first'], undefined],
    [[], undefined]
  ] as const)('%j → %s', ([numbers, expected]) => {
    expect(nextNumber(numbers)).toBe(expected)
  })

  test.for([
    [['GR-26-02', 'SA-26-05'], 'GR-26-02', 'GR-26-03'],
    [['GR-26-02', 'GR-26-09', 'SA-26-05'], 'GR-26-02', 'GR-26-10'],
    [['GR-26-02'], 'first', undefined]
  ] as const)('%j, like %s → %s', ([numbers, like, expected]) => {
    expect(nextNumber(numbers, like)).toBe(expected)
  })
})
