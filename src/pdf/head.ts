/** The head of the first page: producer, title, number, facts and the overall answer. */

import type { CertificateDocument } from '../documents/types.ts'
import { drawFacts } from './facts.ts'
import { MARK_GAP } from './grid.ts'
import { drawMark, MARK_SIZE } from './marks.ts'
import { bodyX } from './section.ts'
import type { Sheet } from './sheet.ts'
import { drawLine, firstBaseline, styles, type Style } from './text.ts'
import type { Words } from './words.ts'

/** Draw the head at the cursor. */
export function drawHead(sheet: Sheet, document: CertificateDocument, words: Words): void {
  drawProducer(sheet, document)
  sheet.y += 5
  sheet.rule(0.8)
  sheet.y += 9
  drawTitle(sheet, document, words)
  sheet.y += 7
  drawFacts(sheet, document.facts)
  sheet.y += 5
  drawAnswer(sheet, document, words)
}

export function drawProducer(
  sheet: Sheet,
  { producer }: Pick<CertificateDocument, 'producer'>
): void {
  const contacts = [producer.email, producer.telephone].join('  ·  ')
  const lines = [producer.address.join(', '), contacts, ...(producer.site ? [producer.site] : [])]
  sideBySide(
    sheet,
    () => sheet.paragraph(sheet.root, 'P', styles.lead, producer.name, ...leftColumn(sheet)),
    () => lines.forEach(line => right(sheet, styles.small, line))
  )
}

function drawTitle(sheet: Sheet, document: CertificateDocument, words: Words): void {
  const { title, number, revision, issued } = document
  const details = [
    ...(revision === undefined ? [] : [`${words.revision} ${revision}`]),
    ...(issued === undefined ? [] : [`${words.issued} ${issued}`])
  ].join('  ·  ')
  drawTitleLine(sheet, title, number ?? words.noNumber, details)
}

/** The title, its number level with it, and what there is to say of that below. */
export function drawTitleLine(sheet: Sheet, title: string, number: string, details: string): void {
  sideBySide(
    sheet,
    () => sheet.paragraph(sheet.root, 'H1', styles.title, title, ...leftColumn(sheet)),
    () => {
      right(sheet, styles.lead, number)
      if (details !== '') right(sheet, styles.body, details)
    }
  )
}

/** The answer between two rules: mark and word in the margin, the sentence beside them. */
function drawAnswer(sheet: Sheet, { answer }: CertificateDocument, words: Words): void {
  const { pdf, area } = sheet
  sheet.rule(0.8)
  sheet.y += 6
  const baseline = firstBaseline(styles.lead, sheet.y)
  sheet.artifact(() => drawMark(pdf, answer.word, area.left, baseline))
  sheet.tagged(sheet.root, 'P', () =>
    drawLine(
      pdf,
      styles.strong,
      words.verdicts[answer.word],
      area.left + MARK_SIZE + MARK_GAP,
      baseline
    )
  )
  sheet.paragraph(sheet.root, 'P', styles.lead, answer.sentence, bodyX(sheet))
  sheet.y += 5
  sheet.rule(0.8)
  sheet.y += 8
}

/** Draw two blocks that start level; the cursor ends below the longer. */
function sideBySide(sheet: Sheet, first: () => void, second: () => void): void {
  const top = sheet.y
  first()
  const bottom = sheet.y
  sheet.y = top
  second()
  sheet.y = Math.max(sheet.y, bottom)
}

const leftColumn = ({ area, half }: Sheet): [x: number, width: number] => [area.left, half]

const right = (sheet: Sheet, style: Style, text: string): void =>
  sheet.paragraph(sheet.root, 'P', style, text, sheet.middle)
