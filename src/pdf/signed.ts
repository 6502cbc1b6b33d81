/** Who signs the file: the section that says so, and the field over it that a reader's program opens. */

import type { PdfSigner } from '../documents/issued-paper.ts'
import { bodyX, drawSection } from './section.ts'
import type { Sheet } from './sheet.ts'
import { signatureDictionary } from './signature.ts'
import { drawLines, heightOf, styles, widthOf, wrapText } from './text.ts'
import type { Words } from './words.ts'

/** Draw the section. @param at the moment the signature claims to be made */
export function drawSigned(sheet: Sheet, signer: PdfSigner, at: Date, words: Words): void {
  const x = bodyX(sheet)
  const lines = wrapText(sheet.pdf, styles.body, words.signedBy(signer), sheet.right - x)
  drawSection(sheet, words.pdfSignature, heightOf(styles.body, lines), () =>
    drawField(sheet, signer, lines, at, words)
  )
}

function drawField(
  sheet: Sheet,
  { name }: PdfSigner,
  lines: readonly string[],
  at: Date,
  words: Words
): void {
  const { pdf, y } = sheet
  const x = bodyX(sheet)
  const width = Math.max(...lines.map(line => widthOf(pdf, styles.body, line)))
  const height = heightOf(styles.body, lines)
  const alt = words.signatureField(name)
  const paragraph = sheet.element(sheet.root, 'P')
  paragraph.add(() => drawLines(pdf, styles.body, lines, x, y))
  const form = sheet.element(paragraph, 'Form', { alt })
  pdf.signatureField(x, y, width, height, {
    structParent: form,
    name: 'signature',
    title: alt,
    signature: signatureDictionary(name, at)
  })
  form.end()
  paragraph.end()
  sheet.y += height
}
