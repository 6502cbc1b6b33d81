/** What pages and certificates say of a lot in each state, on each day. */

import { describe, expect, test } from 'vitest'
import { noRegister } from '../../src/documents/issued.ts'
import type { LotDocument } from '../../src/documents/types.ts'
import { marks, plainSpaces } from '../../src/documents/words.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { pageOf, publicSite, siteOf, workshopSite } from './demo.ts'

const publicOn = (asOf: string, files = demoFiles) => siteOf(files, { edition: 'public', asOf })
const certificateOf = ({ certificates }: typeof publicSite, number: string) =>
  certificates.find(page => page.number === number)!
const titlesOf = ({ document }: ReturnType<typeof pageOf>) =>
  document.papers.map(({ title }) => title)
const lotsOf = (site: typeof publicSite) => site.lots.map(({ document }) => document.lot)

describe('a lot under concession', () => {
  const page = pageOf(publicSite, 'EB-26-007')

  test('says so, and that it fails', () => {
    expect(page.document.status).toEqual({
      state: 'concession',
      sentence:
        'Released under concession on 12 May 2026 by the quality manager, for a customer who accepted the deviation.'
    })
    expect(page.document.answer).toEqual({
      word: 'fail',
      sentence:
        'Does not meet 2 of the 6 limits of grade flake-200, revision 1: free acidity as H₂SO₄ and pH of the slurry.'
    })
    expect(page.document.notices).toEqual([
      'This lot was let go under a concession and is not released for general sale.'
    ])
  })

  test('names the customer on no certificate, and no reason, quantity or expiry', () => {
    expect(page.certificates.length).toBeGreaterThan(0)
    const text = JSON.stringify(page.certificates)
    for (const secret of ['Knorrfluxia', 'washes the flake', '75 g', 'December 2026'])
      expect(text).not.toContain(secret)
    expect(text).toContain('for a customer who accepted the deviation')
  })

  test('tells the workshop all of it', () => {
    const text = JSON.stringify(pageOf(workshopSite, 'EB-26-007').process)
    for (const told of ['Knorrfluxia', 'washes the flake', '75 g', 'until 31 December 2026'])
      expect(text).toContain(told)
  })
})

describe('a withdrawn lot', () => {
  test('was released until the day, with nothing to notice', () => {
    const before = pageOf(publicOn('2026-09-07'), 'EB-26-008')
    expect(before.document.status.state).toBe('released')
    expect(before.document.notices).toEqual([])
    expect(before.certificates[0]!.document.mark).toBeUndefined()
  })

  test('says not to use it, and why, on its page and on that of its certificate', () => {
    const site = publicOn('2026-09-08')
    const page = pageOf(site, 'EB-26-008')
    const { document, certificates } = page
    expect(document.notices).toEqual([
      'Do not use this lot. Withdrawn on 8 September 2026 by the quality manager: the stock jar was found with a split liner; moisture on the recheck of 7 September 2026 was 1.4 %, above the limit.'
    ])
    const certificate = certificateOf(site, 'CT-26-011')
    expect(certificate.notices).toEqual([
      'Do not rely on this certificate. It was withdrawn on 8 September 2026.'
    ])
    expect(certificate.revisions.map(({ state, standing }) => [state, standing])).toEqual([
      [
        'withdrawn',
        'Withdrawn on 8 September 2026: the stock jar was found with a split liner; moisture on the recheck of 7 September 2026 was 1.4 %, above the limit.'
      ]
    ])
    expect(titlesOf(page)[0]).toBe('Certificate CT-26-011, revision 1, withdrawn (PDF)')
    // What was issued never changes: the paper itself stays as it was drawn.
    expect(certificates.map(({ document: { mark } }) => mark)).toEqual([undefined])
  })

  test.for([
    ['scrapped', 'Scrapped on 20 September 2026 by the quality manager.'],
    ['rejected', 'Rejected on 20 September 2026 by the quality manager.'],
    ['quarantine', 'In quarantine since 20 September 2026, by the quality manager.']
  ] as const)('stays public with its warning once it is %s', ([state, sentence]) => {
    const files = withChange(
      demoFiles,
      'batches/EB-26-008.yaml',
      'above the limit\n',
      `above the limit\n  - { is: ${state}, on: 2026-09-20, by: quality manager, because: Quibblethorn }\n`
    )
    const { document } = pageOf(siteOf(files, { edition: 'public' }), 'EB-26-008')
    expect(document.notices).toEqual([`Do not use this lot. ${sentence}`])
  })
})

describe('an earlier day', () => {
  test('shows a lot in quarantine until it is released', () => {
    const workshopOn = (asOf: string) =>
      pageOf(siteOf(demoFiles, { edition: 'workshop', asOf }), 'EB-26-001').document
    expect(workshopOn('2026-01-28').status.sentence).toBe(
      'In quarantine: no decision on release has been taken.'
    )
    expect(workshopOn('2026-01-28').notices).toEqual([])
    expect(workshopOn('2026-01-29').status.sentence).toBe(
      'Released on 29 January 2026 by the quality manager.'
    )
    expect(lotsOf(publicOn('2026-01-28'))).not.toContain('EB-26-001')
    expect(lotsOf(publicOn('2026-01-29'))).toContain('EB-26-001')
  })

  test('shows quarantine, then the concession', () => {
    const stateOn = (asOf: string) =>
      pageOf(siteOf(demoFiles, { edition: 'workshop', asOf }), 'EB-26-007').document.status.sentence
    expect(stateOn('2026-05-06')).toBe('In quarantine since 6 May 2026, by the laboratory lead.')
    expect(stateOn('2026-05-11')).toBe(stateOn('2026-05-06'))
    expect(stateOn('2026-05-12')).toContain('Released under concession on 12 May 2026')
  })

  test('knows no lot, furnace run or certificate of a later one', () => {
    const site = siteOf(demoFiles, { edition: 'workshop', asOf: '2026-02-12' })
    expect(lotsOf(site)).toContain('FL-26-001')
    for (const { document, certificates } of site.lots) {
      expect(document.made <= '2026-02-12').toBe(true)
      for (const { document: paper } of certificates) expect(paper.dated <= '2026-02-12').toBe(true)
    }
    const chain = pageOf(site, 'EB-26-001').document.chain.filter(link => link.url)
    expect(chain.map(({ lot }) => lot)).toEqual(['EB-26-001', 'XR-26-01', 'FL-26-001'])
  })
})

describe('certificates', () => {
  test('of a revised one: newest first, the older one told to be superseded', () => {
    const page = pageOf(publicSite, 'EB-26-006')
    const { certificates } = page
    expect(
      certificates.map(({ document: { number, revision, mark, amends }, url }) => ({
        number,
        revision,
        mark,
        amends,
        url
      }))
    ).toEqual([
      {
        number: 'CT-26-007',
        revision: '2',
        mark: undefined,
        amends:
          'Replaces revision 1. Reason: date of the ash test corrected; no figure has changed.',
        url: 'certificates/CT-26-007/CT-26-007-r2.pdf'
      },
      {
        number: 'CT-26-007',
        revision: '1',
        mark: undefined,
        amends: undefined,
        url: 'certificates/CT-26-007/CT-26-007-r1.pdf'
      }
    ])
    expect(titlesOf(page)).toEqual([
      'Certificate CT-26-007, revision 2 (PDF)',
      'Certificate CT-26-007, revision 1, superseded (PDF)',
      'Figures for programs (JSON)',
      'Statement of working (PDF)'
    ])
    const { revisions, notices } = certificateOf(publicSite, 'CT-26-007')
    expect(notices).toEqual([])
    expect(revisions.map(({ revision, standing }) => [revision, standing])).toEqual([
      ['2', 'Stands as issued on 4 May 2026.'],
      [
        '1',
        'Superseded by revision 2 on 4 May 2026: date of the ash test corrected; no figure has changed.'
      ]
    ])
  })

  test('ordered and not issued: prepared in the workshop, a preview outside', () => {
    const edition = (edition: 'public' | 'workshop') =>
      pageOf(siteOf(demoFiles, { edition, register: noRegister }), 'EB-26-006')
    const prepared = edition('workshop')
    expect(prepared.certificates.map(({ document: { mark }, url }) => [mark, url])).toEqual([
      [marks.prepared, 'lots/EB-26-006/CT-26-007-r2-prepared.pdf'],
      [marks.prepared, 'lots/EB-26-006/CT-26-007-r1-prepared.pdf']
    ])
    expect(titlesOf(prepared)[0]).toBe(
      'Certificate CT-26-007, revision 2, prepared, not issued (PDF)'
    )
    expect(titlesOf(edition('public'))[0]).toBe('Preview of the certificate (PDF)')
  })

  test('before its revision the first one stands unmarked', () => {
    const { certificates } = pageOf(publicOn('2026-05-03'), 'EB-26-006')
    expect(certificates.map(({ document, url }) => [document.mark, url])).toEqual([
      [undefined, 'certificates/CT-26-007/CT-26-007-r1.pdf']
    ])
  })

  test('where none was issued: a preview that says so', () => {
    const files = demoFiles.filter(({ path }) => !path.includes('CT-26-007'))
    const [{ document, url } = { document: undefined, url: '' }] = pageOf(
      siteOf(files, { edition: 'public' }),
      'EB-26-006'
    ).certificates
    expect(url).toBe('lots/EB-26-006/EB-26-006-preview.pdf')
    expect(document).toMatchObject({ preview: true, mark: marks.preview })
    expect(document).not.toHaveProperty('number')
    expect(document).not.toHaveProperty('signatory')
    expect(document?.statements[0]).toContain('no certificate has been issued')
  })

  test('give the same figures, word for word, as the page', () => {
    // An issued paper keeps the spaces it was set with; which may end a line can change since.
    const said = ({ results, answer }: Pick<LotDocument, 'results' | 'answer'>): unknown =>
      JSON.parse(plainSpaces(JSON.stringify([results, answer])))
    for (const page of publicSite.lots)
      for (const { document } of page.certificates)
        expect(said(document)).toEqual(said(page.document))
  })
})
