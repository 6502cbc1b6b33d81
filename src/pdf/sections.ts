/** What follows the results: each section with its heading in the margin. Lengths in points. */

import type { CertificateDocument, HazardText } from '../documents/types.ts'
import type { Element } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import {
  drawLine,
  drawLines,
  firstBaseline,
  HAIRLINE,
  heightOf,
  styles,
  widthOf,
  wrapText
} from './text.ts'
import type { Words } from './words.ts'

const HEAD_WIDTH = 92
const HEAD_GAP = 10
const SECTION_GAP = 5
const PARAGRAPH_GAP = 2
/** From a section's rule to its text. */
const RULE_GAP = 3
const CODE_WIDTH = 68

/** Kept free below each section, so that the end mark is not alone on a page. */
const END_HEIGHT = 16

/** Lines a section's heading must not be parted from. */
const KEPT_LINES = 2

/**
 * Draw every section that has something to say, then the mark of the end. The last two stay on one
 * page, so that none is turned to for a single line.
 */
export function drawSections(sheet: Sheet, document: CertificateDocument, words: Words): void {
  const text = (heading: string, texts: readonly string[]) => drawTexts(sheet, heading, texts)
  text(words.alsoNotMeasured, document.notMeasured.length ? [document.notMeasured.join(', ')] : [])
  text(words.decisionRule, [document.decisionRule])
  const signed = document.signatory ? [`${words.signatory}: ${document.signatory}`] : []
  text(words.release, [document.release.sentence, ...signed])
  if (document.hazards) drawHazards(sheet, document.hazards, words)
  text(words.cautions, document.cautions)
  text(words.traceability, document.traceability)
  const url = document.url ? [document.url] : []
  sheet.keepTogether(
    sectionHeight(sheet, words.statements, document.statements) +
      sectionHeight(sheet, words.online, url) +
      END_HEIGHT
  )
  text(words.statements, document.statements)
  if (document.url) drawOnline(sheet, document.url, words)
  drawEnd(sheet, document.preview ? words.endOfPreview : words.end)
}

/** Where the text beside the headings starts. */
export const bodyX = (sheet: Sheet): number => sheet.area.left + HEAD_WIDTH + HEAD_GAP

/** Height of a section of texts on one page; none without texts. */
function sectionHeight({ pdf, right, area }: Sheet, heading: string, texts: readonly string[]) {
  if (texts.length === 0) return 0
  const head = heightOf(styles.heading, wrapText(pdf, styles.heading, heading, HEAD_WIDTH))
  const width = right - area.left - HEAD_WIDTH - HEAD_GAP
  const body = texts
    .map(text => heightOf(styles.body, wrapText(pdf, styles.body, text, width)))
    .reduce((sum, height) => sum + height + PARAGRAPH_GAP)
  return RULE_GAP + Math.max(head, body) + SECTION_GAP
}

/** A heading in the margin, a hairline above, and a body that may run over pages. */
function drawSection(sheet: Sheet, heading: string, height: number, body: () => void): void {
  const lines = wrapText(sheet.pdf, styles.heading, heading, HEAD_WIDTH)
  const headHeight = heightOf(styles.heading, lines)
  sheet.ensureSpace(RULE_GAP + Math.max(headHeight, height) + SECTION_GAP + END_HEIGHT, heading)
  if (!sheet.atStart) sheet.rule(0.3, HAIRLINE)
  sheet.y += RULE_GAP
  const { pages, y } = sheet
  sheet.tagged(sheet.root, 'H2', () =>
    drawLines(sheet.pdf, styles.heading, lines, sheet.area.left, y)
  )
  body()
  if (sheet.pages === pages) sheet.y = Math.max(sheet.y, y + headHeight)
  sheet.y += SECTION_GAP
}

function drawTexts(sheet: Sheet, heading: string, texts: readonly string[]): void {
  if (texts.length === 0) return
  drawSection(sheet, heading, KEPT_LINES * styles.body.leading, () =>
    texts.forEach((text, index) => {
      if (index > 0) sheet.y += PARAGRAPH_GAP
      sheet.paragraph(sheet.root, 'P', styles.body, text, bodyX(sheet))
    })
  )
}

/** Signal word, codes with their texts, and who says so. */
function drawHazards(sheet: Sheet, hazards: HazardText, words: Words): void {
  const x = bodyX(sheet)
  const kept = styles.lead.leading + KEPT_LINES * styles.body.leading
  drawSection(sheet, words.hazards, kept, () => {
    sheet.paragraph(sheet.root, 'P', styles.lead, hazards.signal ?? words.noSignal, x)
    sheet.y += PARAGRAPH_GAP
    if (hazards.statements.length > 0) drawStatements(sheet, hazards.statements)
    const source = `${words.wordingFrom}: ${hazards.edition}.`
    sheet.paragraph(sheet.root, 'P', styles.small, `${hazards.basis} ${source}`, x)
  })
}

function drawStatements(sheet: Sheet, statements: HazardText['statements']): void {
  const table = sheet.element(sheet.root, 'Table')
  for (const { code, text } of statements) drawStatement(sheet, table, code, text)
  table.end()
  sheet.y += PARAGRAPH_GAP
}

function drawStatement(sheet: Sheet, table: Element, code: string, text: string): void {
  const { pdf, right } = sheet
  const x = bodyX(sheet)
  const codes = wrapText(pdf, styles.strong, code, CODE_WIDTH - HEAD_GAP)
  const lines = wrapText(pdf, styles.body, text, right - x - CODE_WIDTH)
  const height = Math.max(heightOf(styles.strong, codes), heightOf(styles.body, lines))
  sheet.ensureSpace(height, text)
  const { y } = sheet
  const row = sheet.element(table, 'TR')
  sheet.tagged(row, 'TH', () => drawLines(pdf, styles.strong, codes, x, y), { scope: 'Row' })
  sheet.tagged(row, 'TD', () => drawLines(pdf, styles.body, lines, x + CODE_WIDTH, y))
  row.end()
  sheet.y += height
}

/** The lot's address, printed in full and to be followed. */
function drawOnline(sheet: Sheet, url: string, words: Words): void {
  const { pdf } = sheet
  const x = bodyX(sheet)
  const lines = wrapText(pdf, styles.body, url, sheet.right - x)
  const height = heightOf(styles.body, lines)
  drawSection(sheet, words.online, height, () => {
    const { y } = sheet
    const width = Math.max(...lines.map(line => widthOf(pdf, styles.body, line)))
    const alt = `${words.linkTo}: ${url}`
    const paragraph = sheet.element(sheet.root, 'P')
    const link = sheet.element(paragraph, 'Link', { alt })
    link.add(() => drawLines(pdf, styles.body, lines, x, y))
    pdf.link(x, y, width, height, url, { structParent: link, Contents: new String(alt) })
    link.end()
    paragraph.end()
    sheet.y += height
  })
}

/** The last line of the last page, below a rule. */
function drawEnd(sheet: Sheet, text: string): void {
  sheet.ensureSpace(END_HEIGHT, text)
  sheet.rule(0.8)
  sheet.y += 4
  const { pdf, area, y } = sheet
  const x = area.left + (area.width - widthOf(pdf, styles.smallStrong, text)) / 2
  sheet.tagged(sheet.root, 'P', () =>
    drawLine(pdf, styles.smallStrong, text, x, firstBaseline(styles.smallStrong, y))
  )
}
