/** Results without readings, from elsewhere or from before: judged as reported, marked wherever they print, never quietly certain. */

import { describe, expect, test } from 'vitest'
import { lotData } from '../../src/data/lot-data.ts'
import { uncertaintyOf } from '../../src/metrology/estimate.ts'
import { groupResults } from '../../src/pdf/results.ts'
import { wordsIn } from '../../src/pdf/words.ts'
import { judgeContent } from '../../src/pipeline.ts'
import { pageOf, siteOf } from '../documents/demo.ts'
import { evaluate, problemsOf, smallFiles, withChange } from '../records-on-disk.ts'

const opened = withChange(
  smallFiles,
  'grades/FK-1.yaml',
  'limits:\n',
  'public: [results, working]\nlimits:\n  ash: { max: 0.60 % }\n'
)

/** The small workshop with a report on its flake. */
const reporting = (entry: string, files = opened) =>
  withChange(
    files,
    'batches/EB-1.yaml',
    'status:',
    `reported:\n  ${entry.replace('@', 'laboratory: Quarrelby Assay, report: QA-7, date: 2026-02-05')}\nstatus:`
  )

const withU = reporting(
  'ash: { value: 0.530 %, expanded-uncertainty: 0.040 %, coverage-factor: 2, @ }'
)
const withoutU = reporting('ash: { value: 0.53 %, without-uncertainty: the report gives none, @ }')
const bound = reporting('ash: { less-than: 0.05 %, @ }')

const resultOf = (files: typeof withU) => evaluate(files).lots.get('EB-1')!.product.ash_percent!
const rowOf = (files: typeof withU) =>
  pageOf(siteOf(files, { edition: 'public' }), 'EB-1').document.results.find(
    ({ key }) => key === 'ash'
  )!
const guarded = (files: typeof withU) =>
  withChange(files, 'grades/FK-1.yaml', 'limits:\n', 'decision-rule: guarded\nlimits:\n')
const verdictOf = (files: typeof withU) =>
  judgeContent(files)
    .lots.find(({ evaluated }) => evaluated.lot === 'EB-1')!
    .rows.find(({ quantity }) => quantity === 'ash_percent')!.verdict

describe('a reported figure', () => {
  test('has the standard uncertainty U/k of its report', () => {
    expect(resultOf(withU).estimate.value).toBe(0.53)
    expect(uncertaintyOf(resultOf(withU).estimate)).toBe(0.02)
  })

  test('without U is known to its last digit by those that build on it: 0.01/√3', () => {
    expect(uncertaintyOf(resultOf(withoutU).estimate)).toBeCloseTo(0.01 / Math.sqrt(3), 15)
  })

  test('of less than L lies between 0 and L: L/2, u = L/√12 (JCGM 100:2008, 4.3.7)', () => {
    const { estimate, below } = resultOf(bound)
    expect([estimate.value, below]).toEqual([0.025, 0.05])
    expect(uncertaintyOf(estimate)).toBeCloseTo(0.05 / Math.sqrt(12), 15)
  })

  test('prints with the digits of its report, not rounded again', () => {
    const row = rowOf(withU)
    expect(row.value?.printed).toBe('0.530')
    expect(row.expandedUncertainty?.printed).toBe('0.040')
    expect(row.coverageFactor?.printed).toBe('2')
    expect(row.n).toBeUndefined()
    expect(rowOf(bound).value?.printed).toBe('< 0.05')
  })

  test('without U prints none, and never ± 0', () => {
    const row = rowOf(withoutU)
    expect([row.expandedUncertainty, row.standardUncertainty, row.coverageFactor]).toEqual(
      Array(3).fill(undefined)
    )
    expect(row.report?.sentence).toContain('no uncertainty is stated: the report gives none')
    expect(row.verdict?.sentence).toBe(
      '0.53 %, no uncertainty stated, as reported, is within the limit of ≤ 0.60 %.'
    )
  })
})

describe('is judged', () => {
  test.for([
    ['simple', withU, 'pass'],
    ['simple, no U', withoutU, 'pass'],
    ['simple, bound', bound, 'pass'],
    ['guarded: 0.53 + 0.04 ≤ 0.60', guarded(withU), 'pass'],
    ['guarded, no U', guarded(withoutU), 'not decidable'],
    ['guarded, bound', guarded(bound), 'pass']
  ] as const)('%s', ([, files, word]) => {
    expect(verdictOf(files)?.word).toBe(word)
  })

  test('with a probability only where U was stated', () => {
    // JCGM 106:2012, 7.3: Φ((0.60 − 0.53)/0.02) = Φ(3.5) = 0.999767.
    expect(verdictOf(withU)?.probability).toBeCloseTo(0.999767, 6)
    expect(verdictOf(withoutU)?.probability).toBeUndefined()
  })

  test('and keeps the lot in where it cannot be decided', () => {
    expect(problemsOf(guarded(withoutU))).toContain(
      'NOT_RELEASABLE status.0.is: cannot be released: the verdict on ash, dry basis is not decidable'
    )
  })
})

describe('of the workshop itself, from before these records', () => {
  const entry = 'ash: { value: 0.53 %, without-uncertainty: the old list states none, @ }'
  const ownOf = (who: string) =>
    reporting(entry.replace('@', `${who}, report: OLD-1, date: 2026-02-05`))
  const files = ownOf('own: yes')
  const site = siteOf(files, { edition: 'public' })
  const page = pageOf(site, 'EB-1')

  test('is nobody else’s wherever it prints', () => {
    const { results, workings } = page.document
    expect(results.find(({ key }) => key === 'ash')?.report?.sentence).toBe(
      'Own earlier result: measured by the producer, taken over without its readings from record OLD-1 of 5 February 2026; no uncertainty is stated: the old list states none.'
    )
    const groups = groupResults(page.certificates[0]!.document.results, wordsIn('en'))
    const titles = groups.flatMap(({ rows }) => rows.map(({ title }) => title))
    expect(titles).toContain('Ash, dry basis (earlier record)')
    const working = workings.find(({ key }) => key === 'ash')
    expect(working?.source).toBe("the producer's own earlier record OLD-1, 5 February 2026")
    const data = JSON.parse(lotData(page, site)) as {
      quantities: Record<string, { source: string; report: unknown }>
    }
    expect(data.quantities.ash).toMatchObject({ source: 'own', report: { by: 'the producer' } })
    expect(JSON.stringify([page.document, page.certificates])).not.toMatch(
      /external (?:result|laboratory)|\(external\)/iu
    )
  })

  test('is judged like any other', () => {
    expect(rowOf(files).verdict?.sentence).toBe(
      '0.53 %, no uncertainty stated, as recorded, is within the limit of ≤ 0.60 %.'
    )
    expect(verdictOf(guarded(files))?.word).toBe('not decidable')
  })

  test.for([
    ['scope: heap', 'MISSING_FIELD reported.ash.laboratory: is missing: nothing says who'],
    ['own: no', 'MISSING_FIELD reported.ash.laboratory: is missing: nothing says who'],
    ['own: yes, laboratory: Quarrelby Assay', 'INVALID_VALUE reported.ash.laboratory: stands'],
    ['own: yes, name-public: yes', 'INVALID_VALUE reported.ash.name-public: stands beside']
  ] as const)('%s: %s', ([who, problem]) => {
    const told = problemsOf(ownOf(who))
    expect(
      told.filter(one => one.startsWith(problem)),
      told.join('\n')
    ).toHaveLength(1)
  })
})

describe('is marked external', () => {
  const site = siteOf(withU, { edition: 'public' })
  const page = pageOf(site, 'EB-1')

  test('in its row, on the certificate, in the working and the data', () => {
    const { results, workings } = page.document
    expect(results.find(({ key }) => key === 'ash')?.report?.sentence).toBe(
      'External result: measured by an external laboratory, report QA-7 of 5 February 2026.'
    )
    const [first] = page.certificates
    const groups = groupResults(first!.document.results, wordsIn('en'))
    const row = groups[0]!.rows.find(({ title }) => title.startsWith('Ash'))!
    expect(row.title).toBe('Ash, dry basis (external)')
    expect(row.notes[0]!.text).toMatch(/^External result: /u)
    expect(workings.find(({ key }) => key === 'ash')?.source).toBe(
      'report QA-7 of an external laboratory, 5 February 2026'
    )
    const data = JSON.parse(lotData(page, site)) as {
      quantities: Record<string, { source: string; report: unknown }>
    }
    expect(data.quantities.ash).toMatchObject({
      source: 'external',
      report: { by: 'an external laboratory', number: 'QA-7', date: '2026-02-05' }
    })
    expect(data.quantities['expansion-volume']).toMatchObject({ source: 'own', report: null })
  })

  test('without the laboratory’s name, unless it may be public', () => {
    expect(JSON.stringify(site)).not.toContain('Quarrelby')
    const named = reporting('ash: { less-than: 0.05 %, name-public: yes, @ }')
    expect(rowOf(named).report?.by).toBe('Quarrelby Assay')
    expect(JSON.stringify(siteOf(withU, { edition: 'workshop' }))).toContain('Quarrelby Assay')
  })
})

describe('beside a figure of our own', () => {
  const beside = (value: string) =>
    reporting(
      `expansion-volume: { value: ${value}, expanded-uncertainty: 12 mL/g, coverage-factor: 2, @ }`,
      opened
    )

  test('ours is judged, and both are shown', () => {
    const files = beside('252 mL/g')
    const row = pageOf(siteOf(reportingOf(files), { edition: 'public' }), 'EB-1').document
      .results[0]!
    expect(row.report).toBeUndefined()
    expect(row.spread).toBe(
      '252\u00a0mL/g ± 12\u00a0mL/g was reported beside it by an external laboratory, report QA-7 of 5 February 2026.'
    )
    expect(problemsOf(files).filter(line => line.startsWith('CONTRADICTION'))).toEqual([])
  })

  // Ours is 260.31 ± 5.39 mL/g: E = |x − x′| / √(5.39² + 12²) is 1 at 13.155 mL/g.
  test.for([
    ['247.2 mL/g', 0],
    ['247.1 mL/g', 1],
    ['273.4 mL/g', 0],
    ['273.5 mL/g', 1]
  ] as const)('%s contradicts it %i times', ([value, times]) => {
    const told = problemsOf(beside(value)).filter(line => line.startsWith('CONTRADICTION'))
    expect(told).toHaveLength(times)
  })
})

/** The same without the limit on ash, so that the lot has all it needs. */
const reportingOf = (files: typeof withU) =>
  withChange(files, 'grades/FK-1.yaml', '  ash: { max: 0.60 % }\n', '')
