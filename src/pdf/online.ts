/** Where to look a paper up: its address, and on an issued one a QR code and its fingerprint. */

import { qrFigure } from '../figures/qr.ts'
import type { Element } from './pdfkit.ts'
import { blockHeight, bodyX, drawSection, PARAGRAPH_GAP, sectionHeight } from './section.ts'
import type { Sheet } from './sheet.ts'
import { BLACK, drawLines, heightOf, styles, widthOf, wrapText } from './text.ts'
import type { Words } from './words.ts'

/** Side of the code with its quiet zone: 23 mm, so that a module is about half a millimetre. */
const QR_SIDE = 66
const QR_GAP = 6

export interface LastSection {
  readonly height: number
  readonly draw: () => void
}

/** The last section of a paper; nothing where there is no address and no fingerprint. */
export function lastSection(
  sheet: Sheet,
  url: string | undefined,
  fingerprint: string | undefined,
  words: Words
): LastSection {
  if (fingerprint !== undefined)
    return {
      height: blockHeight(checkHeight(sheet, url, fingerprint, words)),
      draw: () => drawCheck(sheet, url, fingerprint, words)
    }
  return url === undefined
    ? { height: 0, draw: () => undefined }
    : {
        height: sectionHeight(sheet, words.online, [url]),
        draw: () => drawOnline(sheet, url, words)
      }
}

/** The lot's address, printed in full and to be followed. */
function drawOnline(sheet: Sheet, url: string, words: Words): void {
  const x = bodyX(sheet)
  const lines = wrapText(sheet.pdf, styles.body, url, sheet.right - x)
  drawSection(sheet, words.online, heightOf(styles.body, lines), () =>
    drawLink(sheet, url, lines, x, words)
  )
}

function drawLink(
  sheet: Sheet,
  url: string,
  lines: readonly string[],
  x: number,
  words: Words
): void {
  const { pdf, y } = sheet
  const width = Math.max(...lines.map(line => widthOf(pdf, styles.body, line)))
  const height = heightOf(styles.body, lines)
  const alt = `${words.linkTo}: ${url}`
  const paragraph = sheet.element(sheet.root, 'P')
  const link = sheet.element(paragraph, 'Link', { alt })
  link.add(() => drawLines(pdf, styles.body, lines, x, y))
  pdf.link(x, y, width, height, url, { structParent: link, Contents: new String(alt) })
  link.end()
  paragraph.end()
  sheet.y += height
}

/** Where the words beside the code start. */
const besideX = (sheet: Sheet, url: string | undefined): number =>
  bodyX(sheet) + (url === undefined ? 0 : QR_SIDE + QR_GAP)

function checkHeight(
  sheet: Sheet,
  url: string | undefined,
  fingerprint: string,
  words: Words
): number {
  const width = sheet.right - besideX(sheet, url)
  const texts = [fingerprintText(fingerprint, words), ...(url ? [words.checkText, url] : [])]
  const height = texts
    .map(text => heightOf(styles.body, wrapText(sheet.pdf, styles.body, text, width)))
    .reduce((sum, one) => sum + one + PARAGRAPH_GAP)
  return Math.max(url === undefined ? 0 : QR_SIDE, height)
}

/** 'Fingerprint: 3f2a 91c0 77de 05b4': the first digits, in groups. */
const fingerprintText = (fingerprint: string, words: Words): string =>
  `${words.fingerprint}: ${(fingerprint.slice(0, 16).match(/.{4}/gu) ?? []).join('\u00a0')}`

function drawCheck(sheet: Sheet, url: string | undefined, fingerprint: string, words: Words): void {
  const height = checkHeight(sheet, url, fingerprint, words)
  const x = besideX(sheet, url)
  drawSection(sheet, words.check, height, () => {
    const top = sheet.y
    if (url !== undefined) drawCode(sheet, url, words)
    sheet.paragraph(sheet.root, 'P', styles.strong, fingerprintText(fingerprint, words), x)
    if (url !== undefined) {
      sheet.y += PARAGRAPH_GAP
      sheet.paragraph(sheet.root, 'P', styles.body, words.checkText, x)
      sheet.y += PARAGRAPH_GAP
      const lines = wrapText(sheet.pdf, styles.body, url, sheet.right - x)
      drawLink(sheet, url, lines, x, words)
    }
    sheet.y = top + height
  })
}

/** The code at the cursor; its quiet zone hangs over, so that the modules align with the text. */
function drawCode(sheet: Sheet, url: string, words: Words): void {
  const { pdf, y } = sheet
  const x = bodyX(sheet)
  const { size, runs } = qrFigure(url)
  const module = QR_SIDE / size
  const bbox = [x, y, x + QR_SIDE, y + QR_SIDE] as const
  const figure: Element = sheet.element(sheet.root, 'Figure', { alt: words.qr(url), bbox })
  figure.add(() => {
    for (const run of runs)
      pdf.rect(x + run.x * module, y + run.y * module, run.length * module, module)
    pdf.fillColor(BLACK).fill()
  })
  figure.end()
}
