/** Type: sizes, line breaking and drawing of single lines. Lengths in points. */

import { assertGlyphs, type Face, fontOf } from './fonts.ts'
import type { LineOptions, Pdf } from './pdfkit.ts'
import { shapedWords } from './shaping.ts'

export interface Style {
  readonly face: Face
  readonly size: number
  /** Distance between baselines. */
  readonly leading: number
  readonly colour: string
}

export const BLACK = '#000000'
export const WHITE = '#ffffff'
/** Contrast 8.9 to 1 on white. */
export const GREY = '#484848'
/** Of the thinnest rules. */
export const HAIRLINE = '#909090'

export const styles = {
  title: { face: 'semibold', size: 18, leading: 22, colour: BLACK },
  banner: { face: 'semibold', size: 12, leading: 16, colour: WHITE },
  lead: { face: 'semibold', size: 10.5, leading: 14, colour: BLACK },
  heading: { face: 'semibold', size: 8.5, leading: 11, colour: BLACK },
  body: { face: 'regular', size: 8.5, leading: 11, colour: BLACK },
  strong: { face: 'semibold', size: 8.5, leading: 11, colour: BLACK },
  /** Words in place of a figure; stands on the body's baseline. */
  quiet: { face: 'regular', size: 7, leading: 11, colour: GREY },
  small: { face: 'regular', size: 7, leading: 9, colour: GREY },
  smallStrong: { face: 'semibold', size: 7, leading: 9, colour: BLACK }
} as const satisfies Record<string, Style>

/** Share of the leading that lies above the baseline. */
const ABOVE_BASELINE = 0.76

/** Signs a long word may be broken after. */
const BREAKABLE = /[-‐–/_@.,;:]$/u

const names = new Map<Face, string>()

/** The name a face goes by in the file; the font works it out anew each time it is asked. */
function nameOf(face: Face): string {
  const name = names.get(face) ?? fontOf(face).postscriptName
  names.set(face, name)
  return name
}

const choose = (pdf: Pdf, style: Style): Pdf => pdf.font(nameOf(style.face)).fontSize(style.size)

/**
 * Open the second face; the first comes with the file. From then on both go by their names, which
 * PDFKit looks up. Given a font, it would compare all name records of both, 28 % of a file's time.
 * Either shapes only words that no file before had.
 */
export function openFaces(pdf: Pdf): void {
  pdf._font.layoutCache = shapedWords(fontOf('regular'))
  pdf.font(fontOf('semibold'))
  pdf._font.layoutCache = shapedWords(fontOf('semibold'))
}

/** Words that don't start a line, and words that don't end one: a number stands beside them. */
const CLINGING = /^[°%]/u
const LEADING = /(^| )[±≥≤<>=]$/u

/** Widths remembered: papers share their words, and measuring took a quarter of a paper's time. */
const MOST_WIDTHS = 8_000

/** In thousandths of the type size, at which PDFKit measures before it scales. */
const widths: Record<Face, Map<string, number>> = { regular: new Map(), semibold: new Map() }

/** Width of a text on one line. */
export function widthOf(pdf: Pdf, style: Style, text: string): number {
  const known = widths[style.face]
  let width = known.get(text)
  if (width === undefined) {
    width = pdf.font(nameOf(style.face)).fontSize(1000).widthOfString(text)
    if (known.size >= MOST_WIDTHS) known.clear()
    known.set(text, width)
  }
  return width * (style.size / 1000)
}

/** Where the first baseline lies in a block that starts at `top`. */
export const firstBaseline = (style: Style, top: number): number =>
  top + style.leading * ABOVE_BASELINE

export const heightOf = (style: Style, lines: readonly string[]): number =>
  lines.length * style.leading

/**
 * Break a text into lines of at most `width`: at spaces, and within a word only where the word
 * alone is wider. A line broken at a space keeps it, so that the words stay apart when read.
 */
export function wrapText(pdf: Pdf, style: Style, text: string, width: number): string[] {
  return text.split('\n').flatMap(paragraph => wrapParagraph(pdf, style, paragraph, width))
}

const lineOptions: LineOptions = {
  lineBreak: false,
  baseline: 'alphabetic',
  textWidth: 0,
  wordCount: 0
}

/** Draw one line with its baseline at `y`. */
export function drawLine(pdf: Pdf, style: Style, text: string, x: number, y: number): void {
  assertGlyphs(style.face, text)
  choose(pdf, style).fillColor(style.colour).text(text, x, y, lineOptions)
}

/** Draw lines below each other, the first line's box starting at `top`. */
export function drawLines(
  pdf: Pdf,
  style: Style,
  lines: readonly string[],
  x: number,
  top: number
): void {
  const baseline = firstBaseline(style, top)
  lines.forEach((line, index) => drawLine(pdf, style, line, x, baseline + index * style.leading))
}

function wrapParagraph(pdf: Pdf, style: Style, text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  let used = 0
  for (const word of wordsOf(text)) {
    for (const piece of breakWord(pdf, style, word, width)) {
      const pieceWidth = widthOf(pdf, style, piece)
      if (line !== '' && used + pieceWidth > width) {
        lines.push(line)
        line = ''
        used = 0
      }
      line += piece
      used += pieceWidth
    }
    line += ' '
    used += widthOf(pdf, style, ' ')
  }
  lines.push(line.trimEnd())
  return lines
}

/** Words as they may stand apart: '950 °C' and '± 4.3' stay one. */
export function wordsOf(text: string): string[] {
  const words: string[] = []
  for (const word of text.split(' ').filter(part => part !== ''))
    if (words.length > 0 && (CLINGING.test(word) || LEADING.test(words.at(-1)!)))
      words.push(`${words.pop()} ${word}`)
    else words.push(word)
  return words
}

/** A word as pieces that each fit; one piece for nearly every word. */
function breakWord(pdf: Pdf, style: Style, word: string, width: number): string[] {
  if (widthOf(pdf, style, word) <= width) return [word]
  const pieces: string[] = []
  let rest = word
  while (widthOf(pdf, style, rest) > width) {
    const piece = longestStart(pdf, style, rest, width)
    pieces.push(piece)
    rest = rest.slice(piece.length)
  }
  return rest === '' ? pieces : [...pieces, rest]
}

/** The longest start of a word that fits: up to a breakable sign if there is one, one sign at least. */
function longestStart(pdf: Pdf, style: Style, word: string, width: number): string {
  let fitting = ''
  let breakable = ''
  for (const sign of word) {
    const longer = fitting + sign
    if (fitting !== '' && widthOf(pdf, style, longer) > width) break
    fitting = longer
    if (BREAKABLE.test(longer)) breakable = longer
  }
  return breakable.length > fitting.length / 2 ? breakable : fitting
}
