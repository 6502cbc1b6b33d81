import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parseRecord } from '../../src/records/document.ts'
import { type DraftKind, draftFrom, draftKinds, nextNumber } from '../../src/records/draft.ts'
import { validateRecord } from '../../src/records/validate.ts'

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

test('a grade and an instrument are begun as their like stands, under the new name', () => {
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
})
