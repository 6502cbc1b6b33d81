/** What customers must never see, and the types that keep it from them. */

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, expectTypeOf, test } from 'vitest'
import { lotData } from '../../src/data/lot-data.ts'
import { certificateDocument } from '../../src/documents/certificate.ts'
import { lotDocument } from '../../src/documents/lot.ts'
import type { GradeView, LotView } from '../../src/documents/lot-view.ts'
import type { ProducerText, SiteDocument } from '../../src/documents/types.ts'
import type { ArticleStatement } from '../../src/judge/article.ts'
import type { SourceFile } from '../../src/problem.ts'
import { demoFiles, smallFiles, withChange } from '../records-on-disk.ts'
import { root } from '../root.ts'
import { pageOf, publicSite, siteOf, workshopSite } from './demo.ts'

/** Words that stand in private fields of the demo and nowhere else. */
const words: readonly string[] = (
  JSON.parse(readFileSync(join(root, 'tests/fixtures/private-words.json'), 'utf8')) as {
    word: string
  }[]
).map(({ word }) => word)

/** The demo with two of its lots only: quick to build over and over. */
const twoLots = demoFiles.filter(
  ({ path }) =>
    !/content\/(batches|expansions|foils|certificates|shipments|complaints|waste|incidents|panels)\//u.test(
      path
    ) || /EB-26-00[18]\.yaml$/u.test(path)
)

/** What they are in public, where nothing is planted. */
const twoPublic = siteOf(twoLots, { edition: 'public' })

/** Everything an edition gives away: pages, certificates, data files. */
const textsOf = (site: SiteDocument): string[] => [
  JSON.stringify(site),
  ...site.lots.map(page => lotData(page, site))
]

/** Words of a list that a site gives away, in any case. */
const found = (site: SiteDocument, wanted: readonly string[]): string[] => {
  const text = textsOf(site).join('\n').toLowerCase()
  return wanted.filter(word => text.includes(word.toLowerCase()))
}

describe('words planted in private fields', () => {
  test('are all in the records', () => {
    const records = demoFiles.map(({ text }) => text).join('\n')
    expect(words.filter(word => !records.includes(word))).toEqual([])
    expect(words.length).toBeGreaterThan(40)
  })

  test('are nowhere in the public edition', () => {
    expect(publicSite.lots.length).toBeGreaterThan(15)
    expect(found(publicSite, words)).toEqual([])
  })

  test('are nowhere in the public edition of any earlier day', () => {
    for (const asOf of ['2026-02-15', '2026-05-12', '2026-06-01', '2026-09-07'])
      expect(found(siteOf(demoFiles, { edition: 'public', asOf }), words)).toEqual([])
  })

  test('would be found: the workshop edition shows most of them', () => {
    const seen = found(workshopSite, words)
    expect(seen).toEqual(expect.arrayContaining(['Zwirbelhoff', 'Knorrfluxia', 'GR-26-01']))
    expect(seen.length).toBeGreaterThan(20)
  })

  test.for([
    ['a grade’s packing', 'grades/flake-250-r1.yaml', 'packing: ', 'packing: Zwirbelhoff '],
    ['a caution', 'grades/flake-250-r1.yaml', 'Keep away', 'Zwirbelhoff, keep away'],
    ['a method', 'methods/TM-01-e1.yaml', 'title: ', 'title: Zwirbelhoff '],
    ['the sampling plan', 'batches/EB-26-001.yaml', 'plan: ', 'plan: Zwirbelhoff '],
    ['the reason of a recall', 'batches/EB-26-008.yaml', 'the stock jar', 'Zwirbelhoff']
  ] as const)('would be found: put into %s, which is public', ([, path, from, to]) => {
    const site = siteOf(withChange(twoLots, path, from, to), { edition: 'public' })
    expect(found(site, words)).toEqual(['Zwirbelhoff'])
  })

  test.for([
    ['notes', 'notes: first lot', 'notes: Quibblethorn first lot'],
    ['the operator', 'by: Tarek Ombrisquill\nnotes', 'by: Quibblethorn\nnotes'],
    ['the tester', 'by: Ina Zwirbelhoff\n    readings', 'by: Quibblethorn\n    readings'],
    ['a step', 'what: held with slow', 'what: Quibblethorn slow'],
    ['the sampler', 'by: Runa Plutterkamp\n  retained', 'by: Quibblethorn\n  retained'],
    ['the retained sample', 'in jar R-26-001', 'in jar Quibblethorn'],
    ['the mass of a charge', '89.98 g', '89.98321 g'],
    ['the mass of the product', '109.24 g', '109.24321 g'],
    ['the reason of a release', 'manager }', 'manager, because: Quibblethorn }'],
    ['a customer', 'manager }', 'manager, customer: Quibblethorn }']
  ] as const)('stay in the workshop: %s', ([, from, to]) => {
    const files = withChange(twoLots, 'batches/EB-26-001.yaml', from, to)
    const planted = ['Quibblethorn', '89.98321', '109.24321']
    const site = siteOf(files, { edition: 'public' })
    expect(found(site, planted)).toEqual([])
    expect(site).toEqual(twoPublic)
  })
})

describe('the public edition', () => {
  test('has no process, no furnace runs, no drafts and no lot that never left', () => {
    expect(publicSite.lots.filter(page => page.process)).toEqual([])
    expect(publicSite.drafts).toEqual([])
    const lots = publicSite.lots.map(({ document }) => document.lot)
    expect(lots.filter(lot => lot.startsWith('XR'))).toEqual([])
    for (const kept of ['EB-26-004', 'EB-26-005', 'EB-26-013', 'EB-26-014', 'FL-26-006'])
      expect(lots).not.toContain(kept)
    expect(workshopSite.lots.map(({ document }) => document.lot)).toEqual(
      expect.arrayContaining(['EB-26-004', 'EB-26-005', 'FL-26-006', 'XR-26-01'])
    )
  })

  test('shows only the sections a grade opens', () => {
    const path = 'grades/flake-250-r1.yaml'
    const all = 'public: [results, working, chain, sampling]'
    const open = (sections: string) =>
      siteOf(withChange(twoLots, path, all, sections), { edition: 'public' })
    const some = pageOf(open('public: [results]'), 'EB-26-001')
    expect(some.document).toMatchObject({ workings: [], chain: [] })
    expect(some.document.results.length).toBeGreaterThan(5)
    for (const { facts } of [some.document, some.certificates[0]!.document])
      expect(facts.map(({ label }) => label)).not.toContain('Sampling')
    const none = pageOf(open('public: [chain]'), 'EB-26-001')
    expect(none.document).toMatchObject({ results: [], workings: [], traceability: [] })
    expect(none.certificates).toEqual([])
    expect(none.summary.key).toEqual([])
    expect(none.document.answer).toEqual({
      word: 'not published',
      sentence:
        'The results of grade flake-250 are not published; whether the lot was let go is its status.'
    })
    expect(open('').lots).toEqual([])
  })

  test('tells the status of a lot and no verdict where its grade keeps results private', () => {
    const closed = withChange(
      twoLots,
      'grades/flake-250-r1.yaml',
      'public: [results, working, chain, sampling]',
      'public: [chain, sampling]'
    )
    const site = siteOf(closed, { edition: 'public' })
    const { document, summary } = pageOf(site, 'EB-26-001')
    expect(document.status.sentence).toMatch(/^Released on /u)
    expect(summary).toMatchObject({ state: 'released', answer: document.answer, key: [] })
    const [listed] = site.grades.find(({ id }) => id === 'flake-250')!.lots
    expect(listed!.answer.word).toBe('not published')
    const verdicts =
      /"(?:pass|fail|conditional \w+|not decidable|not judged)"|\bMeets|Does not meet|Within all|Outside/u
    for (const text of textsOf(site)) expect(text).not.toMatch(verdicts)

    // The paper for the buyer is made in the workshop and tells all; what it carries is public.
    const own = pageOf(siteOf(closed, { edition: 'workshop' }), 'EB-26-001')
    expect(own.document.answer.sentence).toMatch(/^Meets all /u)
    expect(own.certificates[0]!.document.answer).toEqual(own.document.answer)
    expect(own.attachment).not.toMatch(verdicts)
    expect(textsOf(twoPublic).join('')).toMatch(verdicts)
  })

  const openGrade = (files: readonly SourceFile[], grade: string) =>
    withChange(files, `grades/${grade}.yaml`, 'limits:', 'public: [results, chain]\nlimits:')

  test('has no page of a grade that opens nothing', () => {
    const gradesOf = (files: readonly SourceFile[], edition: 'public' | 'workshop') =>
      siteOf(files, { edition }).grades.map(({ id }) => id)
    expect(gradesOf(smallFiles, 'public')).toEqual([])
    expect(gradesOf(openGrade(smallFiles, 'FK-1'), 'public')).toEqual(['FK-1'])
    expect(gradesOf(smallFiles, 'workshop')).toEqual(['FF-1', 'FK-1'])
  })

  test('names a furnace run only where it leads to a lot that has a page', () => {
    const flakeOnly = openGrade(smallFiles, 'FK-1')
    const chainOf = (files: readonly SourceFile[]) =>
      pageOf(siteOf(files, { edition: 'public' }), 'EB-1').document.chain.map(({ lot }) => lot)
    expect(chainOf(flakeOnly)).toEqual(['EB-1'])
    expect(chainOf(openGrade(flakeOnly, 'FF-1'))).toEqual(['EB-1', 'XR-1', 'FL-1'])
  })
})

describe('the allow-list', () => {
  // A field added to a view reaches customers: it has to be added here too, on purpose.
  test('of a lot has these fields and no other', () => {
    expectTypeOf<keyof LotView>().toEqualTypeOf<
      | 'tongue'
      | 'lot'
      | 'kind'
      | 'made'
      | 'grade'
      | 'rule'
      | 'asOf'
      | 'rows'
      | 'word'
      | 'state'
      | 'status'
      | 'calledBack'
      | 'quantity'
      | 'sampling'
      | 'chain'
      | 'traceability'
      | 'hazards'
      | 'foil'
    >()
    expectTypeOf<keyof NonNullable<LotView['foil']>>().toEqualTypeOf<
      'direction' | 'inhibitor' | 'visual' | 'look'
    >()
    expectTypeOf<keyof NonNullable<NonNullable<LotView['foil']>['visual']>>().toEqualTypeOf<
      | 'unit'
      | 'tested'
      | 'lotSize'
      | 'inspected'
      | 'nonconforming'
      | 'takenOut'
      | 'defects'
      | 'plan'
      | 'isAccepted'
    >()
    expectTypeOf<keyof NonNullable<LotView['hazards']>>().toEqualTypeOf<
      'evidence' | 'classification' | 'declared' | 'comparison' | 'decisions' | 'open' | 'article'
    >()
    expectTypeOf<keyof ArticleStatement>().toEqualTypeOf<
      'statement' | 'basis' | 'function' | 'on' | 'until' | 'atMost'
    >()
    expectTypeOf<keyof NonNullable<LotView['sampling']>>().toEqualTypeOf<
      'plan' | 'increments' | 'on'
    >()
  })

  test('of a grade has these fields and no other', () => {
    expectTypeOf<keyof GradeView>().toEqualTypeOf<
      | 'id'
      | 'revision'
      | 'validFrom'
      | 'title'
      | 'kind'
      | 'description'
      | 'sizes'
      | 'declared'
      | 'decisionRule'
      | 'limits'
      | 'measured'
      | 'visual'
      | 'typical'
      | 'notMeasured'
      | 'public'
      | 'packing'
      | 'storage'
      | 'containers'
      | 'keep'
      | 'retestAfterMonths'
      | 'retest'
      | 'casNumber'
      | 'safetyDataSheet'
      | 'hazards'
      | 'article'
      | 'service'
      | 'cautions'
    >()
    expectTypeOf<keyof NonNullable<NonNullable<GradeView['service']>['oxygen']>>().toEqualTypeOf<
      'says' | 'method' | 'laboratory' | 'number' | 'date'
    >()
  })

  test('of the producer has these fields and no other', () => {
    expectTypeOf<keyof ProducerText>().toEqualTypeOf<
      'name' | 'address' | 'email' | 'telephone' | 'site'
    >()
    expect(Object.keys(publicSite.producer).sort()).toEqual([
      'address',
      'email',
      'name',
      'site',
      'telephone'
    ])
  })

  test('is all that pages and certificates are made of', () => {
    expectTypeOf(lotDocument).parameter(0).toEqualTypeOf<LotView>()
    expectTypeOf(certificateDocument).parameter(0).toEqualTypeOf<LotView>()
  })
})
