/**
 * A bench sheet: large type, boxes to write into with gloves on, black on white. Lengths in points.
 */

import type { BenchSheet } from '../documents/bench-sheet-types.ts'
import { qrFigure } from '../figures/qr.ts'
import { openFile } from './file.ts'
import { drawFeet, drawRunningHead, footHeight, wrapFoot } from './furniture.ts'
import { drawProducer } from './head.ts'
import type { PdfFile, Subset } from './pdfkit.ts'
import { areaOf, Sheet, textWidthOn } from './sheet.ts'
import { BLACK, drawLines, heightOf, type Style, wrapText } from './text.ts'
import { type Words, wordsIn } from './words.ts'

/** Read at arm's length: 4 mm capitals for what is weighed, never below 10 pt. */
const big: Style = { face: 'semibold', size: 13, leading: 16, colour: BLACK }
const text: Style = { face: 'regular', size: 10.5, leading: 13.5, colour: BLACK }
const strong: Style = { face: 'semibold', size: 10.5, leading: 13.5, colour: BLACK }
const headline: Style = { face: 'semibold', size: 24, leading: 29, colour: BLACK }

const PADDING = 4
const GAP = 8
/** A box that takes a figure written with a gloved hand: 10 mm high. */
const BOX_HEIGHT = 28
const QR_SIDE = 80

/** One column of a table to fill in: a share of the width, and whether a box stands there. */
interface Column {
  readonly title: string
  readonly share: number
  readonly style?: Style
  readonly box?: boolean
}

/** The PDF of a bench sheet. */
export async function benchSheetPdf(
  sheet: BenchSheet,
  subset: Subset = 'PDF/A-3a'
): Promise<Uint8Array> {
  const pdf = openFile(
    {
      title: `${sheet.title}, ${sheet.lot}`,
      author: sheet.producer.name,
      subject: sheet.lot,
      language: sheet.language,
      dated: sheet.dated
    },
    subset
  )
  draw(pdf, sheet, wordsIn(sheet.language))
  return pdf.finish()
}

function draw(pdf: PdfFile, document: BenchSheet, words: Words): void {
  const size = document.paper === 'A4' ? 'A4' : 'LETTER'
  const foot = wrapFoot(pdf, `${document.title}  ·  ${document.lot}`, words, textWidthOn(size))
  const sheet = new Sheet(pdf, areaOf(size, footHeight(foot)), page =>
    drawRunningHead(page, { ...document, title: `${document.title}, ${document.lot}` })
  )
  drawTop(sheet, document)
  drawTable(sheet, 'Weigh in', amountColumns, document.amounts.map(amountCells))
  drawTable(
    sheet,
    'Steps',
    stepColumns,
    document.steps.map(step => [step])
  )
  drawTexts(sheet, 'Must stand ready', document.ready)
  for (const { heading, texts } of document.cautions) drawTexts(sheet, heading, texts)
  drawTexts(sheet, 'What this sheet is not', document.statements)
  drawTable(
    sheet,
    'Readings to take',
    readingColumns,
    document.readings.map(({ what, how }) => [what, how])
  )
  drawTable(
    sheet,
    'Signed',
    signColumns,
    document.signatures.map(who => [who])
  )
  drawFeet(sheet, foot, words)
  sheet.root.end()
}

const amountColumns: readonly Column[] = [
  { title: 'As', share: 0.15, style: text },
  { title: 'What, and from which lot', share: 0.39, style: text },
  { title: 'Planned', share: 0.2, style: big },
  { title: 'Weighed', share: 0.26, box: true }
]

const amountCells = ({ as, what, lot, planned }: BenchSheet['amounts'][number]): string[] => [
  as,
  `${what}\n${lot}`,
  planned
]

const stepColumns: readonly Column[] = [
  { title: 'Step', share: 0.4, style: text },
  { title: 'At', share: 0.2, box: true },
  { title: '°C', share: 0.2, box: true },
  { title: 'pH, g', share: 0.2, box: true }
]

const readingColumns: readonly Column[] = [
  { title: 'Reading', share: 0.24, style: strong },
  { title: 'How', share: 0.5, style: text },
  { title: 'Found', share: 0.26, box: true }
]

const signColumns: readonly Column[] = [
  { title: 'Who', share: 0.4, style: text },
  { title: 'Signature', share: 0.6, box: true }
]

/** Producer, title and facts, the code of the record beside them. */
function drawTop(sheet: Sheet, document: BenchSheet): void {
  drawProducer(sheet, document)
  sheet.y += 5
  sheet.rule(0.8)
  sheet.y += GAP
  const top = sheet.y
  const width = sheet.area.width - QR_SIDE - GAP
  const { left } = sheet.area
  sheet.paragraph(sheet.root, 'H1', headline, document.lot, left, width)
  sheet.paragraph(sheet.root, 'P', big, document.title, left, width)
  for (const { label, text: said } of document.facts)
    sheet.paragraph(sheet.root, 'P', text, `${label}: ${said}`, left, width)
  sheet.paragraph(sheet.root, 'P', text, `Record: ${document.record}`, left, width)
  drawCode(sheet, document.record, top)
  sheet.y = Math.max(sheet.y, top + QR_SIDE) + GAP
}

function drawCode(sheet: Sheet, record: string, top: number): void {
  const { pdf } = sheet
  const x = sheet.right - QR_SIDE
  const { size, runs } = qrFigure(record)
  const module = QR_SIDE / size
  const bbox = [x, top, x + QR_SIDE, top + QR_SIDE] as const
  const figure = sheet.element(sheet.root, 'Figure', { alt: `QR code: ${record}`, bbox })
  figure.add(() => {
    for (const run of runs)
      pdf.rect(x + run.x * module, top + run.y * module, run.length * module, module)
    pdf.fillColor(BLACK).fill()
  })
  figure.end()
}

function drawHeading(sheet: Sheet, heading: string, kept: number): void {
  const lines = wrapText(sheet.pdf, big, heading, sheet.area.width)
  sheet.ensureSpace(heightOf(big, lines) + PADDING + kept, heading)
  const { y } = sheet
  sheet.tagged(sheet.root, 'H2', () => drawLines(sheet.pdf, big, lines, sheet.area.left, y))
  sheet.y += heightOf(big, lines) + 2
}

function drawTexts(sheet: Sheet, heading: string, texts: readonly string[]): void {
  if (texts.length === 0) return
  drawHeading(sheet, heading, 2 * text.leading)
  for (const one of texts) sheet.paragraph(sheet.root, 'P', text, one, sheet.area.left)
  sheet.y += GAP
}

/** Rows that are never split, their head repeated on each page; boxes stand empty. */
function drawTable(
  sheet: Sheet,
  heading: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[]
): void {
  if (rows.length === 0) return
  const planned = rows.map(row => planRow(sheet, columns, row))
  drawHeading(sheet, heading, strong.leading + planned[0]!.height)
  const table = sheet.element(sheet.root, 'Table')
  const titles = planRow(
    sheet,
    columns.map(column => ({ ...column, style: strong, box: false })),
    columns.map(({ title }) => title)
  )
  const head = sheet.element(table, 'TR')
  drawTitles(sheet, titles, (_, paint) => sheet.tagged(head, 'TH', paint, { scope: 'Column' }))
  head.end()
  for (const row of planned) {
    if (row.height > sheet.space) {
      sheet.newPage()
      drawTitles(sheet, titles, (_, paint) => sheet.artifact(paint, 'Pagination'))
      sheet.assertSpace(row.height, heading)
    }
    const element = sheet.element(table, 'TR')
    drawRow(sheet, row, ({ x }, paint) =>
      x === sheet.area.left
        ? sheet.tagged(element, 'TH', paint, { scope: 'Row' })
        : sheet.tagged(element, 'TD', paint)
    )
    element.end()
  }
  table.end()
  sheet.y += GAP
}

interface Cell {
  readonly x: number
  readonly width: number
  readonly style: Style
  readonly lines: readonly string[]
  readonly box: boolean
}

interface Row {
  readonly cells: readonly Cell[]
  readonly height: number
}

function planRow(sheet: Sheet, columns: readonly Column[], row: readonly string[]): Row {
  const { area, pdf } = sheet
  let x = area.left
  const cells = columns.map(({ share, style = text, box = false }, index): Cell => {
    const width = share * area.width
    const lines = box ? [] : wrapText(pdf, style, row[index] ?? '', width - PADDING)
    const cell = { x, width, style, lines, box }
    x += width
    return cell
  })
  const heights = cells.map(({ box, style, lines }) => (box ? BOX_HEIGHT : heightOf(style, lines)))
  return { cells, height: Math.max(...heights) + 2 * PADDING }
}

type Mark = (cell: Cell, paint: () => void) => void

function drawTitles(sheet: Sheet, row: Row, mark: Mark): void {
  drawCells(sheet, row, mark)
  sheet.y += row.height - PADDING
}

function drawRow(sheet: Sheet, row: Row, mark: Mark): void {
  sheet.rule(0.4)
  drawCells(sheet, row, mark)
  sheet.y += row.height
}

function drawCells(sheet: Sheet, { cells, height }: Row, mark: Mark): void {
  const { pdf, y } = sheet
  for (const cell of cells)
    mark(cell, () => {
      if (cell.box)
        pdf
          .lineWidth(1)
          .strokeColor(BLACK)
          .rect(cell.x + 2, y + PADDING, cell.width - 4, height - 2 * PADDING)
          .stroke()
      else drawLines(pdf, cell.style, cell.lines, cell.x, y + PADDING)
    })
}
