/** The hazard block: pictograms, signal word, statements, and why. Lengths in points. */

import type {
  ComputedHazards,
  HazardEdition,
  HazardText,
  PictogramText
} from '../documents/types.ts'
import type { Element } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import { BLACK, drawLines, heightOf, styles, WHITE, widthOf, wrapText } from './text.ts'
import type { Words } from './words.ts'

const CODE_WIDTH = 68
const CODE_GAP = 10
const PARAGRAPH_GAP = 2

/** Pictograms are drawn 100 units wide, and printed 10 mm from tip to tip. */
const PICTOGRAM = { units: 100, width: 28.35, gap: 5 } as const

const inks: Record<PictogramText['parts'][number]['ink'], string> = {
  black: BLACK,
  white: WHITE,
  red: '#e2001a'
}

/** Lines of the block that stay with its heading. */
const KEPT_LINES = 2

/** Height that must not be parted from the heading. */
export const leastHazardHeight = ({ pictograms }: Pick<HazardText, 'pictograms'>): number =>
  (pictograms.length > 0 ? PICTOGRAM.width : styles.lead.leading) + KEPT_LINES * styles.body.leading

/** Draw the block beside its heading, its left edge at x. */
export function drawHazardBody(sheet: Sheet, hazards: HazardText, words: Words, x: number): void {
  drawSignal(sheet, hazards, words, x)
  if (hazards.statements.length > 0) drawStatements(sheet, hazards.statements, x)
  else sheet.paragraph(sheet.root, 'P', styles.body, words.noStatement, x)
  if (hazards.computed) drawComputed(sheet, hazards.computed, x)
  for (const one of hazards.editions ?? []) drawEdition(sheet, one, words, x)
  const source = `${words.wordingFrom}: ${words.wording(hazards.edition)}.`
  const fine = `${hazards.transport} ${hazards.basis} ${source}`
  sheet.paragraph(sheet.root, 'P', styles.small, fine, x)
}

/** The signal word beside the heading, pictograms after it. */
function drawSignal(
  sheet: Sheet,
  { pictograms, signal }: Pick<HazardText, 'pictograms' | 'signal'>,
  words: Words,
  x: number
): void {
  const top = sheet.y
  const word = signal ?? words.noSignal
  sheet.paragraph(sheet.root, 'P', styles.lead, word, x)
  if (pictograms.length === 0) return
  sheet.y = top
  drawPictograms(sheet, pictograms, x + widthOf(sheet.pdf, styles.lead, word) + CODE_GAP)
  sheet.y = top + PICTOGRAM.width + PARAGRAPH_GAP
}

function drawPictograms(sheet: Sheet, pictograms: readonly PictogramText[], x: number): void {
  const row = sheet.element(sheet.root, 'P')
  for (const [index, { title, parts }] of pictograms.entries()) {
    const left = x + index * (PICTOGRAM.width + PICTOGRAM.gap)
    sheet.tagged(row, 'Figure', () => drawParts(sheet, parts, left), { alt: title })
  }
  row.end()
}

function drawParts({ pdf, y }: Sheet, parts: PictogramText['parts'], left: number): void {
  pdf
    .save()
    .translate(left, y)
    .scale(PICTOGRAM.width / PICTOGRAM.units)
  for (const { path, ink } of parts) pdf.path(path).fillColor(inks[ink]).fill()
  pdf.restore()
}

/** The computed classification, each class with its reasons. */
function drawComputed(sheet: Sheet, computed: ComputedHazards, x: number): void {
  const { sentence, agreement, classes, from, notes, dust } = computed
  sheet.paragraph(sheet.root, 'P', styles.body, `${sentence} ${agreement}`, x)
  const reasons = [
    ...classes.flatMap(one => [`${one.name} (${one.statement}).`, ...one.why]),
    ...from,
    ...notes
  ]
  if (reasons.length > 0) sheet.paragraph(sheet.root, 'P', styles.small, reasons.join(' '), x)
  if (dust !== undefined) sheet.paragraph(sheet.root, 'P', styles.small, dust, x)
  sheet.y += PARAGRAPH_GAP
}

/** The label of another edition, its pictograms after its name. */
function drawEdition(
  sheet: Sheet,
  { title, sentence, pictograms, signal, statements, edition }: HazardEdition,
  words: Words,
  x: number
): void {
  sheet.ensureSpace(leastHazardHeight({ pictograms }), title)
  drawSignal(
    sheet,
    { pictograms, signal: `${title}${signal === undefined ? '' : `: ${signal}`}` },
    words,
    x
  )
  if (statements.length > 0) drawStatements(sheet, statements, x)
  sheet.paragraph(
    sheet.root,
    'P',
    styles.small,
    `${sentence} ${words.wordingFrom}: ${words.wording(edition)}.`,
    x
  )
  sheet.y += PARAGRAPH_GAP
}

function drawStatements(sheet: Sheet, statements: HazardText['statements'], x: number): void {
  const table = sheet.element(sheet.root, 'Table')
  for (const { code, text } of statements) drawStatement(sheet, table, code, text, x)
  table.end()
  sheet.y += PARAGRAPH_GAP
}

function drawStatement(sheet: Sheet, table: Element, code: string, text: string, x: number): void {
  const { pdf, right } = sheet
  const codes = wrapText(pdf, styles.strong, code, CODE_WIDTH - CODE_GAP)
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
