/** A content folder as a whole: what no single file can show. */

import { describe, expect, test } from 'vitest'
import { buildDocuments, judgeContent } from '../../src/pipeline.ts'
import { formatProblem, type Problem, problemData, type SourceFile } from '../../src/problem.ts'
import { loadContent } from '../../src/records/content.ts'
import { sized } from '../thorough.ts'
import { badRecords, base, edited, withFile } from './workshop.ts'

const told = (problem: Problem) => {
  const { file, line, column, code } = problemData(problem)
  return `${file} ${line}:${column} ${code}`
}

const problemsOf = (files: readonly SourceFile[]) => judgeContent(files).problems.map(told)

function draftsIn(files: readonly SourceFile[]): string[] {
  const loaded = loadContent(files)
  return (loaded.ok ? loaded.value : loaded.sound).drafts.map(({ lot }) => lot)
}

describe('the producer', () => {
  const without = base.filter(({ path }) => path !== 'producer.yaml')

  test('is missed where no file holds it', () => {
    const [problem, ...others] = judgeContent(without).problems
    expect(others).toEqual([])
    expect(problem).toMatchObject({ code: 'MISSING_RECORD', file: { path: 'producer.yaml' } })
    expect(formatProblem(problem!)).toBe(
      [
        'producer.yaml:1:1 MISSING_RECORD',
        '  the content has no producer record',
        '',
        '  1 | ',
        '    | ^',
        '  hint: add producer.yaml at the top of the content folder'
      ].join('\n')
    )
  })

  test('left out or unreadable hides no fault of the other records', () => {
    const wrong = edited('batches/EB-1.yaml', ['titrant: NA-1', 'titrant: NB-9'])
    const others = withFile('batches/EB-1.yaml', wrong).filter(
      ({ path }) => path !== 'producer.yaml'
    )
    expect(problemsOf(others)).toEqual([
      'batches/EB-1.yaml 21:14 UNKNOWN_REFERENCE',
      'producer.yaml 1:1 MISSING_RECORD'
    ])
    expect(problemsOf([...others, { path: 'producer.yaml', text: 'name: [' }])).toEqual([
      'batches/EB-1.yaml 21:14 UNKNOWN_REFERENCE',
      'producer.yaml 1:7 YAML_SYNTAX'
    ])
  })

  test('is the one at the top where there are two, whatever the order of files', () => {
    const text = base.find(({ path }) => path === 'producer.yaml')!.text
    const two = [{ path: 'a/producer.yaml', text }, ...base]
    expect(problemsOf(two)).toEqual(['a/producer.yaml 1:1 DUPLICATE_ID'])
    expect(problemsOf(two.reverse())).toEqual(['a/producer.yaml 1:1 DUPLICATE_ID'])
  })
})

test('an empty folder, an empty file and a file of blanks', () => {
  expect(problemsOf([])).toEqual(['producer.yaml 1:1 MISSING_RECORD'])
  for (const text of ['', ' ', '\n', '\n\n', '\uFEFF', '# words\n'])
    expect(problemsOf(withFile('materials/X-1.yaml', text))).toEqual([
      'materials/X-1.yaml 1:1 NOT_A_RECORD'
    ])
})

test('two lots made from each other are a circle', () => {
  const lot = (name: string, from: string) =>
    `lot: ${name}\ngrade: FK-1\nmade: 2026-03-02\nfrom:\n  - { lot: ${from}, mass: 5 g }\nproduct: { mass: 5 g }\n`
  const files = [
    ...base,
    { path: 'batches/EB-2.yaml', text: lot('EB-2', 'EB-3') },
    { path: 'batches/EB-3.yaml', text: lot('EB-3', 'EB-2') }
  ]
  const { problems } = judgeContent(files)
  expect(problems.map(told)).toEqual(['batches/EB-3.yaml 5:12 LOT_CYCLE'])
  expect(problems[0]!.message).toBe('goes round in a circle: EB-2 from EB-3 from EB-2')
})

test('a record that cannot be read is no fault of those that name it', () => {
  for (const { path } of base) {
    const found = problemsOf(withFile(path, 'what: [\n'))
    expect(found).toEqual([`${path} 1:7 YAML_SYNTAX`])
  }
})

test('nor is one whose file has another name than the record', () => {
  const files = base
    .filter(({ path }) => path !== 'grades/FK-1.yaml')
    .concat({ path: 'grades/coarse-r3.yaml', text: edited('grades/FK-1.yaml', ['kind:', 'sort:']) })
  expect(problemsOf(files)).toEqual([
    'grades/coarse-r3.yaml 1:1 MISSING_FIELD',
    'grades/coarse-r3.yaml 5:1 UNKNOWN_FIELD'
  ])
})

describe('nested deeper than any record', () => {
  test.for([
    ['brackets', `lot: ${'['.repeat(10_000)}`],
    ['brackets, closed', `lot: ${'['.repeat(10_000)}${']'.repeat(10_000)}`],
    ['braces', `lot: ${'{ a: '.repeat(10_000)}${'}'.repeat(10_000)}`],
    ['dashes', `${'- '.repeat(10_000)}x`],
    ['question marks', `${'? '.repeat(5_000)}x`],
    ['lines', Array.from({ length: 2_000 }, (_, n) => `${' '.repeat(n)}a:`).join('\n')]
  ] as const)('%s give one problem and no crash', ([, text]) => {
    const { problems } = judgeContent(withFile('materials/X-1.yaml', text))
    expect(problems).toHaveLength(1)
    expect(['YAML_SYNTAX', 'YAML_FEATURE']).toContain(problems[0]!.code)
    expect(formatProblem(problems[0]!).split('\n')[3]!.length).toBeLessThan(140)
  })
})

test('a hundred thousand aliases of aliases are refused, not expanded', () => {
  const lines = Array.from(
    { length: 20 },
    (_, n) =>
      `a${n}: &a${n} [${Array.from({ length: 9 }, () => (n ? `*a${n - 1}` : 'x')).join(', ')}]`
  )
  const { problems } = judgeContent(withFile('materials/X-1.yaml', lines.join('\n')))
  expect(new Set(problems.map(({ code }) => code))).toEqual(new Set(['YAML_FEATURE']))
})

test('lots named like words of the language reach their pages', () => {
  const lot = (name: string) =>
    `lot: ${name}\ngrade: FK-1\nmade: 2026-03-02\nfrom:\n  - { lot: EB-1, mass: 2 g }\nproduct: { mass: 2 g }\n`
  const names = ['constructor', 'toString', 'hasOwnProperty', '0123', '26e11', '1.50', 'null', 'no']
  const files = names.map(name => ({ path: `batches/${name}.yaml`, text: lot(name) }))
  const { site, problems } = buildDocuments([...base, ...files], { edition: 'workshop' })
  expect(problems.filter(({ code }) => code !== 'NO_CALIBRATION')).toEqual([])
  const text = JSON.stringify(site)
  for (const name of names) expect(text).toContain(`"${name}"`)
})

/** Every bad record that joins under a path of its own, with the record faults of each. */
const joined = badRecords.flatMap(({ path: name, text }) => {
  const [, mode, path] = /^\uFEFF?#[^\n]*\n# (replaces|joins): (\S+)\r?\n/u.exec(text) ?? []
  return mode && path
    ? [{ path: path.replace(/([^/]+)$/u, `${name.replace('.yaml', '')}-$1`), text }]
    : []
})

test('every problem of every file is told in one run, as if each stood alone', () => {
  const ownFaults = ({ path, text }: SourceFile) =>
    problemsOf([{ path, text }]).filter(line => line.startsWith(`${path} `) && isOwn(line))
  const together = problemsOf([...base, ...joined]).filter(isOwn)
  expect(joined.length).toBeGreaterThan(65)
  expect(together).toEqual(expect.arrayContaining(joined.flatMap(ownFaults)))
})

/** Codes that a file earns by its own text alone, whatever stands beside it. */
const isOwn = (line: string) =>
  /(YAML_|DUPLICATE_FIELD|NOT_A_RECORD|_FIELD|WRONG_TYPE|UNKNOWN_WORD|BAD_DATE|COMMA_|_UNIT|WRONG_DIM|NOT_A_Q|INVALID_V)/u.test(
    line
  )

test('a draft that is no YAML yet is in nobody’s way', () => {
  for (const text of ['charge: [\n', 'product: { mass: 12,00 g }\n', '- astray\n'])
    for (const draft of ['draft: yes\n', '']) {
      const file = { path: 'batches/EB-7.yaml', text: `lot: EB-7\n${draft}${text}` }
      expect(problemsOf([...base, file]).some(line => line.includes('EB-7.yaml'))).toBe(!draft)
      expect(draftsIn([...base, file])).toEqual(draft ? ['EB-7'] : [])
    }
})

test('files looked through before come to the same among others, as they were read', () => {
  const copies = (files: readonly SourceFile[]) => files.map(file => ({ ...file }))
  const draft = { path: 'batches/EB-7.yaml', text: 'lot: EB-7\ndraft: yes\n' }
  const broken = { path: 'grades/FK-1.yaml', text: 'what: [\n' }
  const whole = [...base, draft]
  const spoilt = [...whole.filter(({ path }) => path !== broken.path), broken]
  for (const files of [whole, spoilt, whole, spoilt]) {
    const { problems, lots } = judgeContent(files)
    const anew = judgeContent(copies(files))
    expect(problems).toEqual(anew.problems)
    expect(lots.map(({ evaluated }) => evaluated.lot)).toEqual(
      anew.lots.map(({ evaluated }) => evaluated.lot)
    )
    expect(loadContent(files).ok).toBe(files === whole)
    expect(draftsIn(files)).toEqual(['EB-7'])
  }
})

test('the order of files changes nothing', () => {
  const alone = badRecords.flatMap(({ text }) => {
    const [, , path] = /^\uFEFF?#[^\n]*\n# (replaces|joins): (\S+)\r?\n/u.exec(text) ?? []
    return path ? [withFile(path, text)] : []
  })
  const some = alone.filter((_, index) => index % sized(8, 3) === 0)
  for (const files of [...some, [...base, ...joined]]) {
    const forwards = judgeContent(files).problems.map(formatProblem)
    expect(judgeContent([...files].reverse()).problems.map(formatProblem)).toEqual(forwards)
  }
})
