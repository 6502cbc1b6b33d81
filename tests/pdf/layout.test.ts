import { describe, expect, it } from 'vitest'
import { certificatePdf } from '../../src/pdf/certificate.ts'
import { splitAtPoint } from '../../src/pdf/grid.ts'
import { certificateDocument, previewDocument } from '../fixtures/documents.ts'
import { requireTool } from '../tools.ts'
import { pageTexts, wordBoxes } from './inspect.ts'
import { attachment, figure, longDocument, manyRows } from './samples.ts'

type Box = ReturnType<typeof wordBoxes>[number]

/** Side margin, and how far a sign's box may reach over it. */
const MARGIN = 48
const OVERHANG = 1

/** From the end of the text to the paper's edge; the foot stands between. */
const ABOVE_EDGE = 54

const heightOf = (box: Box): number => box.bottom - box.top

/** Two words on each other: their boxes share ground, though neighbouring lines may touch. */
const collide = (a: Box, b: Box): boolean =>
  a.page === b.page &&
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5 &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.45 * Math.min(heightOf(a), heightOf(b))

const collisions = (boxes: readonly Box[]): string[] =>
  boxes.flatMap((a, index) =>
    boxes
      .slice(index + 1)
      .filter(b => collide(a, b))
      .map(b => `page ${a.page}: ${a.text} and ${b.text}`)
  )

const outside = (boxes: readonly Box[]): string[] =>
  boxes
    .filter(
      box =>
        box.left < MARGIN - OVERHANG ||
        box.right > box.width - MARGIN + OVERHANG ||
        box.top < 36 ||
        box.bottom > box.height - 24
    )
    .map(box => `page ${box.page}: ${box.text}`)

const wide = (text: string): string => `${text} `.repeat(30).trim()

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('nothing is cut or overprinted', () => {
  it.each([
    ['the sample', certificateDocument],
    ['a preview', previewDocument],
    ['forty properties and long names', longDocument],
    ['forty properties on Letter', { ...longDocument, paper: 'Letter' as const }],
    ['a preview of forty', { ...longDocument, preview: true, mark: 'Preview, not issued' }],
    ['a title of many words', { ...certificateDocument, title: wide('Certificate') }],
    ['a long mark', { ...previewDocument, mark: wide('Preview, not issued') }],
    ['a long word', { ...certificateDocument, statements: ['M'.repeat(400)] }],
    ['no results', { ...certificateDocument, results: [] }],
    [
      'figures wider than their columns',
      {
        ...certificateDocument,
        results: manyRows(3).map(row => ({
          ...row,
          unit: { printed: 'milligram per square centimetre', ucum: 'mg/cm2' },
          value: figure('1234567890123456.789'),
          expandedUncertainty: figure('0.000000000000012'),
          limit: { printed: '123456789.01 to 123456789.02', of: 'every sheet of every roll' }
        }))
      }
    ]
  ])('in %s', async (_, document) => {
    const boxes = wordBoxes(await certificatePdf(document, attachment))
    expect(boxes.length).toBeGreaterThan(50)
    expect(outside(boxes)).toEqual([])
    expect(collisions(boxes)).toEqual([])
  })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('the results', () => {
  it('repeat their header on each page they reach', async () => {
    const pages = pageTexts(await certificatePdf(longDocument, attachment))
    const withRows = pages.filter(page => /no\. \d+ /.test(page))
    expect(withRows.length).toBeGreaterThan(2)
    for (const page of withRows) expect(page).toMatch(/on this lot.* Unit +n? *.*Limit +\w+\n/)
    expect(withRows[1]).toMatch(/^[^\n]*\n+Measured on this lot, continued +Unit/)
  })

  it('have their decimal points below each other', async () => {
    const values = ['111.1', '888.8', '8.88', '0.1111', '8888', '11']
    const rows = manyRows(values.length)
    const results = rows.map((row, index) => ({ ...row, value: figure(values[index]!) }))
    const boxes = wordBoxes(await certificatePdf({ ...certificateDocument, results }, attachment))
    const box = (text: string) => boxes.find(word => word.text === text)!
    const widthOf = (text: string) => box(text).right - box(text).left
    const digit = (widthOf('8888') - widthOf('11')) / 2
    expect(widthOf('111.1')).toBeCloseTo(widthOf('888.8'), 3)
    const points = values.map(text => box(text).left + splitAtPoint(text)[0].length * digit)
    for (const point of points) expect(point).toBeCloseTo(points[0]!, 1)
  })

  it.each([
    ['262.1', '262', '.1'],
    ['≥ 250', '≥ 250', ''],
    ['0.95 to 1.05', '0.95 to 1', '.05'],
    ['< 2.0', '< 2', '.0'],
    ['1.5 × 10⁻⁵', '1', '.5 × 10⁻⁵'],
    ['250 min', '250', ' min'],
    ['none', '', 'none']
  ])('%s is cut at its decimal point', (text, before, after) => {
    expect(splitAtPoint(text)).toEqual([before, after])
  })

  it('break no figure, however long, while there is room', async () => {
    const results = manyRows(2).map(row => ({
      ...row,
      value: figure('1234567890123.456'),
      expandedUncertainty: figure('0.00000000012')
    }))
    const [page] = pageTexts(await certificatePdf({ ...certificateDocument, results }, attachment))
    expect(page).toMatch(/ 1234567890123\.456 +± 0\.00000000012 +≥ 250 /)
  })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('a page break', () => {
  const starts = [
    /^ *Decision rule +Guarded/m,
    /^ *Release +Released/m,
    /^ *Hazards +Warning/m,
    /^ *Cautions +Caution 1\./m,
    /^ *Traceability +BAL-1/m,
    /^ *Statements +The results relate/m,
    /^ *This lot online +https/m
  ]

  it('never parts a heading from its text, nor leaves the link or the end mark alone', async () => {
    for (let count = 1; count <= 24; count += 1) {
      const cautions = Array.from({ length: count }, (_, index) => `Caution ${index + 1}.`)
      const bytes = await certificatePdf({ ...certificateDocument, cautions }, attachment)
      const pages = pageTexts(bytes)
      for (const start of starts) expect(pages.join('\f'), `${count} cautions`).toMatch(start)
      expect(pages.at(-1), `${count} cautions`).toMatch(
        /^ *Statements +The results relate[^]*Not to be reproduced[^]*This lot online[^]*End of certificate/m
      )
      expect(outside(wordBoxes(bytes)), `${count} cautions`).toEqual([])
    }
  })
})

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('the end mark', () => {
  it('finds its place below a last section of any length', async () => {
    const { url, ...rest } = certificateDocument
    expect(url).toBeDefined()
    for (let count = 4; count <= 16; count += 1) {
      const statements = Array.from({ length: count }, (_, index) => `Statement ${index + 1}.`)
      const boxes = wordBoxes(await certificatePdf({ ...rest, statements }, attachment))
      const [mark, ...others] = boxes.filter(({ text }) => text === 'End')
      expect(others).toEqual([])
      expect(mark!.bottom, `${count} statements`).toBeLessThan(mark!.height - ABOVE_EDGE)
      const onLast = boxes.filter(box => box.page === mark!.page && box.text === 'Statement')
      expect(onLast, `${count} statements`).toHaveLength(count)
      expect(outside(boxes), `${count} statements`).toEqual([])
      expect(collisions(boxes), `${count} statements`).toEqual([])
    }
  })
})

describe('a block taller than a page is refused, as it would run over the edge', () => {
  const endless = 'endless '.repeat(2000)
  const [row] = manyRows(1)

  it.each([
    ['a first row', { results: [{ ...row!, title: endless }] }],
    ['a later row', { results: [...manyRows(9), { ...row!, title: endless }] }],
    ['a fact', { facts: [...certificateDocument.facts, { label: 'Sampling', text: endless }] }],
    [
      'a hazard statement',
      {
        hazards: {
          ...certificateDocument.hazards!,
          statements: [{ code: 'H319', text: endless }]
        }
      }
    ]
  ])('%s', async (_, part) => {
    const making = certificatePdf({ ...certificateDocument, ...part }, attachment)
    await expect(making).rejects.toThrow("taller than a page: 'endless endless")
  })
})
