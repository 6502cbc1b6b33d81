/** Datasheets as files: nothing cut or overprinted, every word of the document there, the archival rules kept. */

import { describe, expect, it } from 'vitest'
import { datasheetIn } from '../../src/documents/grade.ts'
import type { Datasheet, TypicalProperty } from '../../src/documents/grade-types.ts'
import { drawScatterChart } from '../../src/figures/scatter-chart.ts'
import { datasheetPdf } from '../../src/pdf/datasheet.ts'
import { buildDocuments } from '../../src/pipeline.ts'
import { generateWorkshop, inGermanToo } from '../bench/generate.ts'
import { publicSite } from '../documents/demo.ts'
import { requireTool } from '../tools.ts'
import { plainText, preflightAll, preflightJars, wordBoxes } from './inspect.ts'
import { faultsOf } from './rules.ts'

const demo = publicSite.grades.map(datasheetIn)
const sheetOf = (id: string) => demo.find(sheet => sheet.id === id)!

const small = (index: number) => ({
  id: `small-${index}`,
  title: `Tensile strength along, MPa, against density, chart ${index}`,
  summary: '3 lots of this grade as dots. '.repeat(index),
  drawing: drawScatterChart(
    [1, 2, 3].map(n => ({ name: `${n}`, x: n, y: n * n, halfX: 0.1, halfY: 0.2, isOwn: n > 1 })),
    { x: 'Foil density, g/cm³', y: 'Tensile strength along, MPa' }
  ),
  table: { caption: '', columns: [], rows: [] }
})

const [first] = sheetOf('flake-250').measured

/** Long names and texts, an odd number of small charts, many rows. */
const strained: Datasheet = {
  ...sheetOf('flake-250'),
  paper: 'Letter',
  title: 'Expandable flake of a grade with a title that takes more than a line of its own',
  measured: Array.from({ length: 40 }, (_, index) => ({
    ...first!,
    key: `p-${index}`,
    title: `Electrical resistivity in the plane of the sheet, four-point method, no. ${index}`
  })),
  density: [1, 2, 3].map(small),
  declared: [{ about: 'Origin', says: 'A statement that goes on. '.repeat(40).trim() }],
  revisions: Array.from({ length: 30 }, (_, index) => ({
    revision: String(30 - index),
    validFrom: '1 January 2026',
    changes: ['Ash, dry basis: was ≤ 2 %, now ≤ 1 %.']
  }))
}

/** A text without what stands at the top and at the foot of each page. */
const withoutEdges = (text: string, { producer, title, id }: Datasheet) =>
  text
    // The face draws both by one glyph.
    .replaceAll('ʼ', '’')
    .replaceAll(`${producer.name}Datasheet,${title}`.replaceAll(/\s/gu, ''), '')
    .replaceAll(new RegExp(`Datasheet·${id},revision.{1,40}?Page\\d+of\\d+`, 'gu'), '')

const cases = [...demo.map(sheet => [sheet.id, sheet] as const), ['strained', strained] as const]

describe.skipIf(!requireTool('pdftotext', 'poppler-utils'))('on paper', () => {
  it.each(cases)('nothing of %s runs over the edge', (_, sheet) => {
    const boxes = wordBoxes(datasheetPdf(sheet))
    expect(boxes.length).toBeGreaterThan(300)
    const outside = boxes.filter(box => box.left < 47 || box.right > box.width - 47)
    expect(outside.map(({ text }) => text)).toEqual([])
    expect(boxes.filter(box => box.top < 36 || box.bottom > box.height - 24)).toEqual([])
  })

  it('heads the lower end of a typical interval with From and the upper one with To', () => {
    const sheet = sheetOf('flake-250')
    const boxes = wordBoxes(datasheetPdf(sheet))
    const [{ lower, upper }] = sheet.observed as [TypicalProperty]
    const rightOf = (text: string) => boxes.find(box => box.text === text)!.right
    const [from, to] = [rightOf('From'), rightOf('To')]
    const near = (text: string, head: number) => Math.abs(rightOf(text) - head)
    expect(near(lower.printed, from)).toBeLessThan(near(lower.printed, to))
    expect(near(upper.printed, to)).toBeLessThan(near(upper.printed, from))
  })

  it.each(cases)('everything %s says is there', (_, sheet) => {
    const text = withoutEdges(plainText(datasheetPdf(sheet)).replaceAll(/\s/gu, ''), sheet)
    const said = [
      sheet.title,
      sheet.description,
      sheet.decisionRule,
      ...(sheet.observed.length > 0 ? sheet.population : []),
      ...sheet.declared.flatMap(({ says, basis }) => [says, basis ?? '']),
      ...sheet.measured.flatMap(({ limit, method }) => [limit?.printed ?? '', method?.id ?? '']),
      ...sheet.observed.flatMap(one => [one.lower.printed, one.upper.printed, one.period]),
      ...sheet.supply.map(fact => fact.text),
      ...sheet.typical.map(fact => fact.text),
      ...sheet.notMeasured,
      ...sheet.cautions,
      ...sheet.safety.sections.flatMap(({ texts }) => texts),
      ...sheet.safety.exposure.rows.flat(),
      sheet.safety.disclaimer,
      ...sheet.statements,
      ...[...sheet.charts, ...sheet.density].flatMap(({ title, summary }) => [title, summary]),
      ...(sheet.hazards?.statements.map(statement => statement.text) ?? [])
    ]
    expect(said.filter(part => !text.includes(part.replaceAll(/\s/gu, '')))).toEqual([])
    expect(text).not.toMatch(/undefined|NaN|\[object/u)
  })

  it('names the figures of a chart by its words, in line with its strokes', () => {
    const boxes = wordBoxes(datasheetPdf(sheetOf('flake-250')))
    const ticks = boxes.filter(({ text }) => ['260', '270', '280'].includes(text))
    expect(ticks).toHaveLength(3)
    const [high, middle, low] = ticks.map(({ top }) => top)
    expect(middle! - high!).toBeCloseTo(low! - middle!, 0)
    expect(new Set(ticks.map(({ right }) => Math.round(right))).size).toBe(1)
  })
})

describe.skipIf(!requireTool('qpdf', 'qpdf'))('the file', () => {
  it.each(cases)('of %s keeps the rules of PDF/A-3a and PDF/UA-1', (_, sheet) => {
    expect(faultsOf(datasheetPdf(sheet), 0)).toEqual([])
  })

  it('comes to the same bytes again, and to others for another day', () => {
    const bytes = Buffer.from(datasheetPdf(strained))
    expect(bytes.equals(datasheetPdf(strained))).toBe(true)
    expect(bytes.equals(datasheetPdf({ ...strained, dated: '2026-10-30' }))).toBe(false)
  })
})

const canJudge = preflightJars.every(([jar, debianPackage]) => requireTool(jar, debianPackage))

it.runIf(canJudge)('the twins in PDF/A-1b are valid to a validator', { timeout: 120_000 }, () => {
  const twins = cases.map(([, sheet]) => datasheetPdf(sheet, 'PDF/A-1b'))
  expect(new Set(preflightAll(twins))).toEqual(new Set(['is a valid PDF/A-1b file']))
})

it('of many lots in German gives each column room, though texts want more than the paper has', async () => {
  const { site } = buildDocuments(inGermanToo(generateWorkshop(100)), { edition: 'public' })
  const grade = site!.forms![1]!.grades.find(({ id }) => id === 'flake-250')!
  const pdf = await datasheetPdf(datasheetIn(grade))
  expect(faultsOf(pdf, 0, 'de')).toEqual([])
})
