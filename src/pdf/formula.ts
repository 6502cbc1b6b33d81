/** Formulas set as mathematics: strokes of fractions and roots, lowered and raised signs. Lengths in points. */

import type { FormulaText, Maths, NamePart } from '../documents/formula-types.ts'
import type { Pdf } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import { BLACK, drawLine, type Style, styles, widthOf } from './text.ts'

/** Something set on a line: how far it reaches, and how it is drawn from its left end on the baseline. */
interface Box {
  readonly width: number
  readonly above: number
  readonly below: number
  readonly draw: (x: number, y: number) => void
}

const SIZE = 10
/** Of the next smaller size, of the size itself. */
const SMALLER = 0.72
const STROKE = 0.5
/** From the baseline to the middle of a sign, where strokes of fractions lie; of the size. */
const AXIS = 0.3
const RISE = 0.36
const DROP = 0.2
const PAD = 2

const styleOf = (size: number): Style => ({
  face: 'regular',
  size,
  leading: size * 1.3,
  colour: BLACK
})

/** A text on the line, with room at its sides. */
function textBox(pdf: Pdf, text: string, size: number, pad = 0): Box {
  const style = styleOf(size)
  return {
    width: widthOf(pdf, style, text) + 2 * pad,
    above: size * 0.75,
    below: size * 0.22,
    draw: (x, y) => drawLine(pdf, style, text, x + pad, y)
  }
}

function rowBox(boxes: readonly Box[]): Box {
  return {
    width: boxes.reduce((sum, { width }) => sum + width, 0),
    above: Math.max(0, ...boxes.map(({ above }) => above)),
    below: Math.max(0, ...boxes.map(({ below }) => below)),
    draw: (x, y) => {
      let at = x
      for (const box of boxes) {
        box.draw(at, y)
        at += box.width
      }
    }
  }
}

const shifted = (box: Box, up: number): Box => ({
  width: box.width,
  above: box.above + up,
  below: box.below - up,
  draw: (x, y) => box.draw(x, y - up)
})

function fractionBox(pdf: Pdf, above: Box, below: Box, size: number): Box {
  const width = Math.max(above.width, below.width) + 2 * PAD
  const axis = size * AXIS
  const [up, down] = [axis + above.below + PAD, below.above + PAD - axis]
  return {
    width: width + 2 * PAD,
    above: up + above.above,
    below: down + below.below,
    draw: (x, y) => {
      const left = x + PAD
      above.draw(left + (width - above.width) / 2, y - up)
      below.draw(left + (width - below.width) / 2, y + down)
      pdf.lineWidth(STROKE).strokeColor(BLACK)
      pdf
        .moveTo(left, y - axis)
        .lineTo(left + width, y - axis)
        .stroke()
    }
  }
}

/** The sign of the root as one stroke, as high as what stands under it. */
function rootBox(pdf: Pdf, of: Box, size: number): Box {
  const hook = size * 0.7
  const top = of.above + PAD
  return {
    width: of.width + hook + PAD,
    above: top + 1,
    below: of.below,
    draw: (x, y) => {
      of.draw(x + hook, y)
      pdf.lineWidth(STROKE).strokeColor(BLACK)
      pdf.moveTo(x, y - size * AXIS).lineTo(x + hook * 0.35, y - size * AXIS)
      pdf.lineTo(x + hook * 0.65, y + of.below).lineTo(x + hook, y - top)
      pdf.lineTo(x + hook + of.width, y - top).stroke()
    }
  }
}

/** Brackets as high as what they hold, their middle level with its. */
function bracketBox(pdf: Pdf, of: Box, size: number): Box {
  const high = Math.max(size, of.above + of.below)
  const sign = (text: string) => {
    const box = textBox(pdf, text, high)
    return shifted(box, (of.above - of.below - box.above + box.below) / 2)
  }
  return rowBox([sign('('), of, sign(')')])
}

const nameBox = (pdf: Pdf, parts: readonly NamePart[], size: number): Box =>
  rowBox(
    parts.map(({ text, at }) =>
      at === 'line' ? textBox(pdf, text, size) : scriptBox(pdf, text, size, at)
    )
  )

const scriptBox = (pdf: Pdf, text: string, size: number, at: 'below' | 'above'): Box =>
  shifted(textBox(pdf, text, size * SMALLER), size * (at === 'below' ? -DROP : RISE))

/** A formula's box at a size. */
function boxOf(pdf: Pdf, maths: Maths, size: number): Box {
  const inner = (one: Maths) => boxOf(pdf, one, size)
  switch (maths.is) {
    case 'row':
      return rowBox(maths.parts.map(inner))
    case 'bracket':
      return bracketBox(pdf, inner(maths.of), size)
    case 'name':
      return nameBox(pdf, maths.parts, size)
    case 'subscript':
      return rowBox([inner(maths.base), scriptBox(pdf, maths.below, size, 'below')])
    case 'power':
      return rowBox([inner(maths.base), scriptBox(pdf, maths.power, size, 'above')])
    case 'fraction':
      return fractionBox(pdf, inner(maths.above), inner(maths.below), size)
    case 'root':
      return rootBox(pdf, inner(maths.of), size)
    case 'sign':
      return maths.text === '\u2061'
        ? rowBox([])
        : textBox(pdf, maths.text, size, maths.text === ',' ? 0 : size * 0.25)
    default:
      return textBox(pdf, maths.text, size, maths.is === 'function' ? 1 : 0)
  }
}

/** Draw a formula at the cursor, statement below statement; read aloud it is its line of text. */
export function drawFormula(sheet: Sheet, statements: readonly FormulaText[]): void {
  for (const { text, maths } of statements)
    if (maths) drawMaths(sheet, maths, text)
    else sheet.paragraph(sheet.root, 'P', styles.body, text)
}

/** Smaller where it would be wider than the page. */
function drawMaths(sheet: Sheet, maths: Maths, alt: string): void {
  const whole = boxOf(sheet.pdf, maths, SIZE)
  const fit = Math.min(1, sheet.area.width / whole.width)
  const box = fit < 1 ? boxOf(sheet.pdf, maths, SIZE * fit * 0.98) : whole
  const height = box.above + box.below + 2 * PAD
  sheet.ensureSpace(height, alt)
  const { y, area } = sheet
  const bbox = [area.left, y, area.left + box.width, y + height] as const
  const figure = sheet.element(sheet.root, 'Formula', { alt, bbox })
  figure.add(() => box.draw(area.left, y + PAD + box.above))
  figure.end()
  sheet.y += height
}
