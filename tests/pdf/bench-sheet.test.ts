/** Bench sheets: nothing cut or overprinted, large enough to read, and a code that leads to the record. */

import { describe, expect, it } from 'vitest'
import { benchSheet, sheetRefusals } from '../../src/documents/bench-sheet.ts'
import type { BenchSheet } from '../../src/documents/bench-sheet-types.ts'
import { benchSheetPdf } from '../../src/pdf/bench-sheet.ts'
import { benchView } from '../../src/records/bench-view.ts'
import { demoFiles, evaluate } from '../records-on-disk.ts'
import { requireTool } from '../tools.ts'
import { plainText, preflightAll, preflightJars, wordBoxes } from './inspect.ts'
import { faultsOf } from './rules.ts'

const { content } = evaluate(demoFiles)
const fileOf = (lot: string) => demoFiles.find(({ path }) => path.endsWith(`/${lot}.yaml`))!
const viewOf = (lot: string) => benchView(fileOf(lot))!
const sheetOf = (lot: string, paper: BenchSheet['paper'] = 'A4') =>
  benchSheet(content, viewOf(lot), `batches/${lot}.yaml`, paper)

const long =
  'Natural flake graphite of extraordinarily coarse Donaudampfschifffahrtselektrizität grade'
const twelve = (paper: BenchSheet['paper']): BenchSheet => ({
  ...sheetOf('EB-26-013', paper),
  lot: 'EB-26-013-with-a-number-of-40-signs-9999',
  record: 'batches/EB-26-013-with-a-number-of-40-signs-9999.yaml',
  amounts: Array.from({ length: 12 }, (_, index) => ({
    as: 'neutraliser',
    what: `${long} ${index + 1}`,
    lot: 'M'.repeat(40),
    planned: '123456.789 g'
  })),
  steps: Array.from({ length: 20 }, (_, index) => `${long}, step ${index + 1}`),
  readings: Array.from({ length: 20 }, () => ({ what: long, how: `${long} ${long} ${long}` })),
  signatures: [long, long]
})

type Box = ReturnType<typeof wordBoxes>[number]

const outside = (boxes: readonly Box[]) =>
  boxes.filter(
    box =>
      box.left < 47 || box.right > box.width - 47 || box.top < 36 || box.bottom > box.height - 24
  )

const collide = (a: Box, b: Box) =>
  a.page === b.page &&
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) >
    0.45 * Math.min(a.bottom - a.top, b.bottom - b.top)

const collisions = (boxes: readonly Box[]) =>
  boxes.flatMap((a, index) =>
    boxes.slice(index + 1).flatMap(b => (collide(a, b) ? [`${a.text} and ${b.text}`] : []))
  )

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('on paper', () => {
  it.each([
    ['a draft', sheetOf('EB-26-014')],
    ['a batch on Letter', sheetOf('EB-26-013', 'Letter')],
    ['12 materials, long names', twelve('A4')],
    ['12 materials, long names, Letter', twelve('Letter')]
  ] as const)('nothing of %s is cut or overprinted', async (_, sheet) => {
    const boxes = wordBoxes(await benchSheetPdf(sheet))
    expect(boxes.length).toBeGreaterThan(100)
    expect(outside(boxes).map(({ text }) => text)).toEqual([])
    expect(collisions(boxes)).toEqual([])
  })

  it('sets each amount beside the others of its row, large', async () => {
    const boxes = wordBoxes(await benchSheetPdf(sheetOf('EB-26-014')))
    const amount = boxes.find(({ text }) => text === '180.03')!
    expect(amount.bottom - amount.top).toBeGreaterThan(13)
    const lot = boxes.find(({ text }) => text === 'GR-26-02')!
    expect(amount.left).toBeGreaterThan(lot.right)
    const body = boxes.filter(box => box.top > 70 && box.bottom < box.height - 60)
    expect(Math.min(...body.map(box => box.bottom - box.top))).toBeGreaterThan(10)
  })

  it('says what is to be weighed, read, ready and signed, and that nothing is called safe', async () => {
    const text = plainText(await benchSheetPdf(sheetOf('EB-26-013')))
    for (const said of [
      'Weigh in',
      '120.02 g',
      'quenched into cold water',
      'TM-01:',
      'Must stand ready',
      'Weighed by',
      'V-1',
      'batches/EB-26-013.yaml',
      'never scale a charge up'
    ])
      expect(text.replace(/\s+/gu, ' ')).toContain(said)
    expect(text.replace(/\s+/gu, ' ')).toContain('No figure here says that a charge is safe')
    expect(text).not.toMatch(/undefined|NaN|\[object/u)
  })
})

describe.skipIf(!requireTool('qpdf', 'qpdf'))('the file', () => {
  it.each([
    ['a draft', sheetOf('EB-26-014')],
    ['12 materials', twelve('Letter')]
  ] as const)('of %s keeps the rules of PDF/A-3a and PDF/UA-1', async (_, sheet) => {
    expect(faultsOf(await benchSheetPdf(sheet), 0)).toEqual([])
  })

  it('comes to the same bytes again', async () => {
    const [a, b] = await Promise.all([benchSheetPdf(twelve('A4')), benchSheetPdf(twelve('A4'))])
    expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true)
  })
})

describe('the limit of the vessel', () => {
  const view = viewOf('EB-26-014')

  it('is held for what is still to be weighed in', () => {
    expect(sheetRefusals(content, view)).toEqual([])
    expect(sheetRefusals(content, { ...view, vessel: 'V-1' }).join()).toContain(
      'graphite 180.03 g, above 110 g'
    )
    expect(sheetRefusals(content, { ...view, vessel: '' })).toEqual([
      'vessel of this charge has no documented limit in force on 2026-11-03'
    ])
  })
})

const canJudge = preflightJars.every(([jar, debianPackage]) => requireTool(jar, debianPackage))

it.runIf(canJudge)('the twins in PDF/A-1b are valid to a validator', async () => {
  const sheets = [sheetOf('EB-26-014'), twelve('Letter')]
  const twins = await Promise.all(sheets.map(sheet => benchSheetPdf(sheet, 'PDF/A-1b')))
  expect(new Set(preflightAll(twins))).toEqual(new Set(['is a valid PDF/A-1b file']))
})
