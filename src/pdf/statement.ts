/** The statement of working of a lot: formula, readings, inputs and budget of every figure. Lengths in points. */

import type { StatementDocument } from '../documents/statement-types.ts'
import type { FieldText, Table, Working } from '../documents/types.ts'
import { drawPairs } from './charts.ts'
import { drawFacts } from './facts.ts'
import { openFile } from './file.ts'
import { drawFormula } from './formula.ts'
import { drawBanner, drawFeet, drawRunningHead, footHeight, wrapFoot } from './furniture.ts'
import { drawProducer, drawTitleLine } from './head.ts'
import type { PdfFile, Subset } from './pdfkit.ts'
import { drawTableSection } from './plain-table.ts'
import { drawEnd, drawTexts } from './sections.ts'
import { areaOf, Sheet, textWidthOn } from './sheet.ts'
import { styles } from './text.ts'
import { type Words, wordsIn } from './words.ts'

/** Height of a figure's name, its outcome and a formula: kept together. */
const KEPT = 80
const GAP = 12
const AFTER = 8

/** The PDF of a statement of working. */
export function statementPdf(document: StatementDocument, subset: Subset = 'PDF/A-3a'): Uint8Array {
  const words = wordsIn(document.language)
  const pdf = openFile(
    {
      title: `${document.title}, ${document.lot}`,
      author: document.producer.name,
      subject: `${words.lot} ${document.lot}`,
      language: document.language,
      dated: document.dated
    },
    subset
  )
  draw(pdf, document, words)
  return pdf.finish()
}

function draw(pdf: PdfFile, document: StatementDocument, words: Words): void {
  const { mark, title, lot } = document
  const size = document.paper === 'A4' ? 'A4' : 'LETTER'
  const foot = wrapFoot(pdf, `${title}  ·  ${words.lot} ${lot}`, words, textWidthOn(size))
  const sheet = new Sheet(pdf, areaOf(size, footHeight(foot)), page => {
    if (mark !== undefined) drawBanner(page, mark, false)
    drawRunningHead(page, document)
  })
  if (mark !== undefined) drawBanner(sheet, mark, true)
  drawProducer(sheet, document)
  sheet.y += 5
  sheet.rule(0.8)
  sheet.y += 9
  drawTitleLine(sheet, title, lot, '')
  sheet.y += 7
  drawFacts(sheet, document.facts)
  sheet.y += GAP
  for (const working of document.workings) drawWorking(sheet, working, words)
  for (const working of document.process)
    drawWorking(sheet, { ...working, title: `${working.title} (${words.ofProcess})` }, words)
  drawTexts(sheet, words.statements, document.statements)
  drawEnd(sheet, words.endOfStatement)
  drawFeet(sheet, foot, words)
  sheet.root.end()
}

function drawWorking(sheet: Sheet, working: Working, words: Words): void {
  const { title, outcome, statements, source, method, notes, field } = working
  const text = (style: (typeof styles)[keyof typeof styles], said: string) =>
    sheet.paragraph(sheet.root, 'P', style, said)
  sheet.keepTogether(KEPT)
  sheet.rule(0.8)
  sheet.y += 4
  sheet.paragraph(sheet.root, 'H2', styles.lead, title)
  text(styles.strong, outcome)
  sheet.y += 2
  drawFormula(sheet, statements)
  sheet.y += 2
  text(styles.small, words.sourceOf(source, method))
  sheet.y += AFTER
  if (field) drawField(sheet, field, words)
  for (const table of [working.readings, working.inputs, working.budget])
    if (table) drawTable(sheet, table, words)
  for (const note of notes) text(styles.body, note)
  sheet.y += GAP
}

function drawTable(sheet: Sheet, table: Table, words: Words): void {
  if (table.rows.length === 0) return
  drawTableSection(sheet, { heading: table.caption, table, texts: [] }, words, 'H3')
}

/** Maps two side by side, then the places in a table. */
function drawField(sheet: Sheet, { legend, maps, places }: FieldText, words: Words): void {
  sheet.paragraph(sheet.root, 'P', styles.small, legend)
  drawPairs(sheet, maps)
  drawTable(sheet, places, words)
}
