/** Problems of both kinds in one run: what cannot be read, and what sound records come to. */

import { describe, expect, test } from 'vitest'
import { judgeContent } from '../../src/pipeline.ts'
import { problemData, type SourceFile } from '../../src/problem.ts'
import { base, edited } from './workshop.ts'

const problemsOf = (files: readonly SourceFile[]) =>
  judgeContent(files).problems.map(problem => {
    const { file, line, code } = problemData(problem)
    return `${file}:${line} ${code}`
  })

const put = (files: readonly SourceFile[], path: string, text: string): SourceFile[] => [
  ...files.filter(file => file.path !== path),
  { path, text }
]

/** Sound as a record, impossible as a product: heavier than any compound of its graphite. */
const heavy = edited('batches/EB-1.yaml', ['lot: EB-1', 'lot: EB-9'], ['120.00 g', '220.00 g'])
const withHeavy = put(base, 'batches/EB-9.yaml', heavy)

describe('one run tells', () => {
  test('nothing but the balance of the heavy batch, to begin with', () => {
    expect(problemsOf(withHeavy)).toContain('batches/EB-9.yaml:11 IMPOSSIBLE_BALANCE')
    expect(new Set(problemsOf(withHeavy).map(line => line.split(':')[0]))).toEqual(
      new Set(['batches/EB-9.yaml'])
    )
  })

  test.for([
    ['foils/FL-1.yaml', 'mass: 5.010 g', 'mass: 5,010 g', 'foils/FL-1.yaml:11 COMMA_DECIMAL'],
    ['producer.yaml', 'roles:', 'rolls:', 'producer.yaml:5 UNKNOWN_FIELD'],
    [
      'expansions/XR-1.yaml',
      'lot: EB-1,',
      'lot: EB-3,',
      'expansions/XR-1.yaml:5 UNKNOWN_REFERENCE'
    ],
    ['certificates/CT-1.yaml', 'issued: 2026', 'issued: 2O26', 'certificates/CT-1.yaml:4 BAD_DATE']
  ] as const)('a fault in %s beside what the batch comes to', ([path, found, wrong, fault]) => {
    const told = problemsOf(put(withHeavy, path, edited(path, [found, wrong])))
    expect(told).toEqual([...problemsOf(withHeavy), fault])
  })
})

describe('what rests on a broken record complains of it no second time', () => {
  test.for([
    ['batches/EB-1.yaml', '120.00 g', '120,00 g', 'its run, its foil, its certificate'],
    ['materials/GR-1.yaml', 'received:', 'recieved:', 'batches made of it'],
    ['instruments/BAL-1.yaml', 'resolution:', 'resolutoin:', 'every lot weighed on it'],
    ['methods/TM-1.yaml', 'edition: 1', 'edition: one', 'its grade, and lots of that'],
    ['grades/FK-1.yaml', 'kind: flake', 'kind: flakes', 'lots of it'],
    ['titrants/NA-1.yaml', 'id: NA-1', 'id: NA 1', 'what was titrated with it']
  ] as const)('%s: %s → %s silences %s', ([path, found, wrong]) => {
    const told = problemsOf(put(withHeavy, path, edited(path, [found, wrong])))
    expect(told.filter(line => !line.startsWith(path) && !line.startsWith('batches/EB-9'))).toEqual(
      []
    )
    expect(told.some(line => line.startsWith(path))).toBe(true)
    // The heavy batch rests on all of them but the other batch.
    expect(told.some(line => line.startsWith('batches/EB-9'))).toBe(path === 'batches/EB-1.yaml')
  })

  test('nor does what bears the same number as another record', () => {
    const twin = put(withHeavy, 'batches/EB-99.yaml', heavy)
    expect(problemsOf(twin)).toEqual(['batches/EB-99.yaml:1 DUPLICATE_ID'])
  })

  test('nor a certificate whose earlier revision cannot be read', () => {
    const first = edited('certificates/CT-1.yaml', ['issued: 2026', 'issued: 2O26'])
    const second = edited('certificates/CT-1.yaml', ['revision: 1', 'revision: 2\nreason: a slip'])
    const files = put(
      put(base, 'certificates/CT-1.yaml', first),
      'certificates/CT-1-r2.yaml',
      second
    )
    expect(problemsOf(files)).toEqual(['certificates/CT-1.yaml:4 BAD_DATE'])
  })
})
