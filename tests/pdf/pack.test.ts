/** A shipment's papers as files: over many pages, on either paper, and in the archival profile. */

import { describe, expect, it } from 'vitest'
import type { CustomerCopy, PackingList, ShipmentPack } from '../../src/documents/shipment-types.ts'
import { customerCopyPdf, packPdf } from '../../src/pdf/pack.ts'
import { packingListPdf } from '../../src/pdf/packing-list.ts'
import { certificateDocument } from '../fixtures/documents.ts'
import { requireTool } from '../tools.ts'
import { preflightAll, preflightJars, run, withFile } from './inspect.ts'
import { sampleLabel } from './label-samples.ts'
import { faultsOf } from './rules.ts'
import { attachment } from './samples.ts'

const columns = ['Container', 'Kind', 'Lot', 'Product', 'Tare, g', 'Net, g', 'Gross, g']

/** A list of so many containers, some with a name longer than a line. */
const listOf = (count: number, paper: 'A4' | 'Letter'): PackingList => ({
  title: 'Packing list',
  number: 'SH-1',
  dated: '2026-03-19',
  language: 'en',
  paper,
  producer: certificateDocument.producer,
  facts: [
    { label: 'Customer', text: 'Brask & Sons <Seals>' },
    { label: 'Order', text: 'PO 1' }
  ],
  containers: {
    heading: 'Containers',
    texts: ['Gross is tare and net together where it was not weighed by itself.'],
    table: {
      caption: 'Containers',
      columns: columns.map((title, index) => ({ title, numeric: index > 3 })),
      rows: Array.from({ length: count }, (_, index) => [
        `C-${index + 1}`,
        'drum, 3 pieces',
        'EB-26-041',
        index % 5 === 0
          ? 'Expandable flake of a grade with a long title. '.repeat(4).trim()
          : 'Flake',
        '31.2',
        '10.00',
        '41.20'
      ])
    }
  },
  sections: [
    { heading: 'Handling', texts: ['Keep dry.', 'Store below 40 °C.'] },
    { heading: 'Carriage', texts: ['No decision is on record.'] }
  ]
})

const copy: CustomerCopy = {
  name: 'C-26-014-r1-SH-1',
  of: { number: 'C-26-014', revision: 1, shipment: 'SH-1' },
  document: certificateDocument,
  limits: {
    heading: 'Customer’s limits',
    texts: ['Simple acceptance.'],
    table: {
      caption: 'Customer’s limits',
      columns: ['Property', 'Limit', 'Verdict'].map(title => ({
        title,
        numeric: title === 'Limit'
      })),
      rows: [['Expansion volume', '≥ 250', 'pass']]
    }
  },
  fingerprint: '5f1c'.repeat(16),
  data: '{"lot":"EB-26-041"}\n'
}

const packOf = (count: number, paper: 'A4' | 'Letter'): ShipmentPack => ({
  packingList: listOf(count, paper),
  copies: [copy, { ...copy, name: 'C-26-015-r1-SH-1' }],
  labels: new Map([['EB-26-041-label', sampleLabel]])
})

const cases = [
  [1, 'A4'],
  [70, 'A4'],
  [70, 'Letter']
] as const

describe('a packing list', () => {
  it.each(cases)('of %i containers on %s keeps the rules', async (count, paper) => {
    expect(faultsOf(await packingListPdf(listOf(count, paper)), 0)).toEqual([])
  })

  it.runIf(requireTool('pdftotext', 'poppler-utils'))(
    'repeats its head on each page and loses no container',
    async () => {
      const bytes = await packingListPdf(listOf(70, 'A4'))
      const text = withFile(bytes, path => run('pdftotext', ['-layout', path, '-']))
      const pages = text.split('\f').filter(page => page.trim() !== '')
      expect(pages.length).toBeGreaterThan(1)
      for (const [index, page] of pages.entries()) {
        expect(page).toContain(`Page ${index + 1} of ${pages.length}`)
        if (/\bC-\d/u.test(page)) expect(page).toMatch(/Container +Kind +Lot/u)
      }
      const numbers = text.match(/\bC-\d+/gu) ?? []
      expect(numbers).toEqual(Array.from({ length: 70 }, (_, index) => `C-${index + 1}`))
    }
  )
})

it('a customer’s copy keeps the rules', async () => {
  expect(faultsOf(await customerCopyPdf(copy, attachment.attachments), 1)).toEqual([])
})

describe('all papers as one file', () => {
  it.each(cases)('with %i containers on %s keep the rules', async (count, paper) => {
    expect(faultsOf(await packPdf(packOf(count, paper)), 2)).toEqual([])
  })

  it('are the same bytes each time, and tell pages paper by paper', async () => {
    const [first, second] = [await packPdf(packOf(70, 'A4')), await packPdf(packOf(70, 'A4'))]
    expect(Buffer.from(first).equals(second)).toBe(true)
  })
})

const canJudge = preflightJars.every(([jar, debianPackage]) => requireTool(jar, debianPackage))

it.runIf(canJudge)(
  'the twins in PDF/A-1b are valid to a validator',
  { timeout: 120_000 },
  async () => {
    const twins = [
      await packingListPdf(listOf(70, 'A4'), 'PDF/A-1b'),
      await packPdf(packOf(3, 'Letter'), 'PDF/A-1b'),
      await customerCopyPdf(copy, [], 'PDF/A-1b')
    ]
    expect(new Set(preflightAll(twins))).toEqual(new Set(['is a valid PDF/A-1b file']))
  }
)
