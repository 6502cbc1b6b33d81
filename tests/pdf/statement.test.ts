/** Statements of working: every figure of a lot with its working, sound, tagged and in full. */

import { beforeAll, describe, expect, it } from 'vitest'
import type { StatementDocument } from '../../src/documents/statement-types.ts'
import { statementPdf } from '../../src/pdf/statement.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { pageOf, publicSite, siteOf, workshopSite } from '../documents/demo.ts'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { requireTool } from '../tools.ts'
import { preflightAll, preflightJars, run, withFile, wordBoxes } from './inspect.ts'
import { faultsOf } from './rules.ts'

const statementIn = (site: SiteDocument, lot: string): StatementDocument =>
  pageOf(site, lot).statement!.document

const german = siteOf(
  withChange(demoFiles, 'producer.yaml', 'paper: A4', 'paper: A4\nsite-languages: [de]'),
  { edition: 'public' }
).forms![0]!

const samples = [
  ['flake for customers', statementIn(publicSite, 'EB-26-001')],
  ['foil read at places', statementIn(publicSite, 'FL-26-011')],
  [
    'foil of the workshop, Letter',
    { ...statementIn(workshopSite, 'FL-26-013'), paper: 'Letter' as const }
  ],
  ['flake of the workshop', statementIn(workshopSite, 'EB-26-012')],
  ['flake in German', statementIn(german, 'EB-26-012')],
  ['foil in German', statementIn(german, 'FL-26-013')]
] as const

/** Words and figures of a file, spaces apart from how its lines break. */
const textOf = (bytes: Uint8Array) =>
  withFile(bytes, path => run('pdftotext', ['-layout', path, '-']))
    .replace(/\s+/gu, '')
    // The face has one glyph for both signs, and readers name it by the other.
    .replaceAll('ʼ', '’')
const bare = (text: string) => text.replace(/\s+/gu, '')

describe.skipIf(!requireTool('qpdf', 'qpdf') || !requireTool('pdftotext', 'poppler-utils'))(
  'a statement',
  () => {
    it.each(samples)('of %s keeps the rules of PDF/A-3a and PDF/UA-1', (_, document) => {
      const bytes = statementPdf(document)
      expect(faultsOf(bytes, 0, document.language)).toEqual([])
      expect(withFile(bytes, path => run('qpdf', ['--check', path]))).toContain(
        'No syntax or stream encoding errors found'
      )
    })

    it.each(samples)('of %s says every outcome, source and note', (_, document) => {
      const text = textOf(statementPdf(document))
      for (const { title, outcome, source, notes, budget } of [
        ...document.workings,
        ...document.process
      ])
        for (const said of [title, outcome, source, ...notes, ...budget.rows.map(row => row[2]!)])
          expect(text).toContain(bare(said))
    })

    it.each(['A4', 'Letter'] as const)('sets figures of a row near each other on %s', paper => {
      const words = wordBoxes(statementPdf({ ...samples[0][1], paper }))
      // Reading 2 of the titration: 10.03 g, 1.31 mL.
      const mass = words.find(({ text }) => text === '10.03')!
      const titre = words.find(({ text, page, top }) =>
        text === '1.31' && page === mass.page ? Math.abs(top - mass.top) < 2 : false
      )!
      expect(titre.left - mass.right).toBeLessThan(60)
      expect(titre.left - mass.right).toBeGreaterThan(15)
    })

    it('sets a numerator above its denominator, and a subscript below its line', () => {
      // t = (Σ t_i) / n
      const words = wordBoxes(statementPdf(samples[1][1])).filter(({ page }) => page === 1)
      const sum = words.find(({ text }) => text === 'Σ')!
      const near = words.filter(
        ({ left, top }) => Math.abs(left - sum.left) < 30 && Math.abs(top - sum.top) < 20
      )
      const middleOf = (wanted: string) => {
        const { top, bottom } = near.find(({ text }) => text === wanted)!
        return (top + bottom) / 2
      }
      const order = [middleOf('Σ'), middleOf('t='), middleOf('n')]
      expect(order).toEqual(order.toSorted((a, b) => a - b))
      expect(middleOf('i')).toBeGreaterThan(middleOf('t') + 1)
    })

    it.each(samples)('of %s writes every date in one way', (_, document) => {
      expect(textOf(statementPdf(document))).not.toMatch(/20\d\d-\d\d-\d\d/u)
    })

    it('for customers holds product tests only, and no mark', () => {
      for (const { statement } of publicSite.lots)
        if (statement)
          expect([statement.document.process, statement.document.mark]).toEqual([[], undefined])
      expect(statementIn(workshopSite, 'EB-26-012').process.length).toBeGreaterThan(3)
      expect(statementIn(workshopSite, 'EB-26-012').mark).toBe('Workshop edition: private')
    })

    it('comes out in the same bytes twice', () => {
      const document = statementIn(publicSite, 'EB-26-001')
      expect(Buffer.compare(statementPdf(document), statementPdf(document))).toBe(0)
    })
  }
)

const canValidate = [requireTool('java', 'default-jre-headless')]
  .concat(preflightJars.map(([jar, debianPackage]) => requireTool(jar, debianPackage)))
  .every(found => found)

describe.skipIf(!canValidate)('the same pages as PDF/A-1b', () => {
  let said: readonly string[]
  beforeAll(() => {
    said = preflightAll(samples.map(([, document]) => statementPdf(document, 'PDF/A-1b')))
  })
  it.each(samples.map(([name], index) => [name, index] as const))(
    '%s passes PDFBox Preflight',
    (_, index) => {
      expect(said[index]).toBe('is a valid PDF/A-1b file')
    }
  )
})
