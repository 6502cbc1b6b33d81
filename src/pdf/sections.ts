/** What follows the results: each section with its heading in the margin. Lengths in points. */

import type { PdfSigner } from '../documents/issued-paper.ts'
import type { CertificateDocument, HazardText } from '../documents/types.ts'
import { noonOf } from './file.ts'
import { drawHazardBody, leastHazardHeight } from './hazards.ts'
import { lastSection } from './online.ts'
import { bodyX, drawSection, END_HEIGHT, PARAGRAPH_GAP, sectionHeight } from './section.ts'
import type { Sheet } from './sheet.ts'
import { drawSigned } from './signed.ts'
import { drawLine, firstBaseline, styles, widthOf } from './text.ts'
import type { Words } from './words.ts'

/** Lines a section's heading must not be parted from. */
const KEPT_LINES = 2

/** What ties a paper to the register and to its producer, as it is printed. */
export interface Tied {
  readonly fingerprint?: string
  /** Who signs the file itself. */
  readonly signer?: PdfSigner
}

/**
 * Draw every section that has something to say, then the mark of the end. The last two stay on one
 * page, so that none is turned to for a single line.
 */
export function drawSections(
  sheet: Sheet,
  document: CertificateDocument,
  words: Words,
  { fingerprint, signer }: Tied
): void {
  const text = (heading: string, texts: readonly string[]) => drawTexts(sheet, heading, texts)
  text(words.changes, [...(document.amends ? [document.amends] : []), ...(document.changes ?? [])])
  text(words.alsoNotMeasured, document.notMeasured.length ? [document.notMeasured.join(', ')] : [])
  text(words.decisionRule, [document.decisionRule])
  const signed = document.signatory ? [`${words.signatory}: ${document.signatory}`] : []
  text(words.release, [document.release.sentence, ...signed])
  if (signer) drawSigned(sheet, signer, noonOf(document.dated), words)
  if (document.hazards) drawHazards(sheet, document.hazards, words)
  text(words.cautions, document.cautions)
  text(words.traceability, document.traceability)
  const last = lastSection(sheet, document.url, fingerprint, words)
  sheet.keepTogether(
    sectionHeight(sheet, words.statements, document.statements) + last.height + END_HEIGHT
  )
  text(words.statements, document.statements)
  last.draw()
  drawEnd(sheet, document.preview ? words.endOfPreview : words.end)
}

export function drawTexts(sheet: Sheet, heading: string, texts: readonly string[]): void {
  if (texts.length === 0) return
  drawSection(sheet, heading, KEPT_LINES * styles.body.leading, () =>
    texts.forEach((text, index) => {
      if (index > 0) sheet.y += PARAGRAPH_GAP
      sheet.paragraph(sheet.root, 'P', styles.body, text, bodyX(sheet))
    })
  )
}

function drawHazards(sheet: Sheet, hazards: HazardText, words: Words): void {
  drawSection(sheet, words.hazards, leastHazardHeight(hazards), () =>
    drawHazardBody(sheet, hazards, words, bodyX(sheet))
  )
}

/** The last line of the last page, below a rule. */
export function drawEnd(sheet: Sheet, text: string): void {
  sheet.ensureSpace(END_HEIGHT, text)
  sheet.rule(0.8)
  sheet.y += 4
  const { pdf, area, y } = sheet
  const x = area.left + (area.width - widthOf(pdf, styles.smallStrong, text)) / 2
  sheet.tagged(sheet.root, 'P', () =>
    drawLine(pdf, styles.smallStrong, text, x, firstBaseline(styles.smallStrong, y))
  )
}
