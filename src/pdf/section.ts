/** One section: its heading in the margin, a hairline above, and what stands beside it. Lengths in points. */

import type { Sheet } from './sheet.ts'
import { drawLines, HAIRLINE, heightOf, styles, wrapText } from './text.ts'

const HEAD_WIDTH = 92
export const HEAD_GAP = 10
const SECTION_GAP = 5
export const PARAGRAPH_GAP = 2
/** From a section's rule to its text. */
const RULE_GAP = 3

/** Kept free below each section, so that the end mark is not alone on a page. */
export const END_HEIGHT = 16

/** Where the text beside the headings starts. */
export const bodyX = (sheet: Sheet): number => sheet.area.left + HEAD_WIDTH + HEAD_GAP

/** Height of a section of texts on one page; none without texts. */
export function sectionHeight(
  { pdf, right, area }: Sheet,
  heading: string,
  texts: readonly string[]
) {
  if (texts.length === 0) return 0
  const head = heightOf(styles.heading, wrapText(pdf, styles.heading, heading, HEAD_WIDTH))
  const width = right - area.left - HEAD_WIDTH - HEAD_GAP
  const body = texts
    .map(text => heightOf(styles.body, wrapText(pdf, styles.body, text, width)))
    .reduce((sum, height) => sum + height + PARAGRAPH_GAP)
  return RULE_GAP + Math.max(head, body) + SECTION_GAP
}

/** A heading in the margin, a hairline above, and a body that may run over pages. */
export function drawSection(sheet: Sheet, heading: string, height: number, body: () => void): void {
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

/** Height of a section whose body is of one piece. */
export const blockHeight = (body: number): number => RULE_GAP + body + SECTION_GAP
