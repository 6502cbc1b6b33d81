/** A chart's strokes and words on paper, in black and greys. Lengths in points. */

import type { Drawing, LineShape, Role, Shape, TextShape } from '../figures/drawing.ts'
import type { Pdf } from './pdfkit.ts'
import type { Sheet } from './sheet.ts'
import { BLACK, drawLine, GREY, HAIRLINE, type Style, widthOf, WHITE } from './text.ts'

interface Look {
  readonly colour: string
  readonly width: number
}

/** Lines that only lead the eye. */
const PALE = '#d4d4d4'

const quiet: Look = { colour: GREY, width: 0.7 }

/** How strokes of a role look, in units of the drawing. */
const looks: Readonly<Partial<Record<Role, Look>>> = {
  grid: { colour: PALE, width: 0.5 },
  bound: { colour: BLACK, width: 1.6 },
  trace: { colour: HAIRLINE, width: 1 },
  plain: { colour: BLACK, width: 1 }
}

/** From white to black, as full as the shade. */
const fills: Readonly<Partial<Record<Role, string>>> = {
  'shade-1': WHITE,
  'shade-2': '#cccccc',
  'shade-3': '#999999',
  'shade-4': '#5c5c5c',
  'shade-5': BLACK
}

const lookOf = (role: Role): Look => looks[role] ?? quiet

const words: Style = { face: 'regular', size: 11, leading: 13, colour: GREY }

/** Height a drawing takes at a width. */
export const drawnHeight = ({ width, height }: Drawing, across: number): number =>
  (height * across) / width

/** Draw a figure at the cursor's height, its left edge at `x`, and say what it shows. */
export function drawFigure(
  sheet: Sheet,
  drawing: Drawing,
  { x, across, alt }: { readonly x: number; readonly across: number; readonly alt: string }
): void {
  const { pdf, y } = sheet
  const bbox = [x, y, x + across, y + drawnHeight(drawing, across)] as const
  sheet.tagged(
    sheet.root,
    'Figure',
    () => {
      pdf
        .save()
        .translate(x, y)
        .scale(across / drawing.width)
      for (const shape of drawing.shapes) drawShape(pdf, shape)
      pdf.restore()
    },
    { alt, bbox }
  )
}

function drawShape(pdf: Pdf, shape: Shape): void {
  if (shape.is === 'text') return drawWord(pdf, shape)
  const { colour, width } = lookOf(shape.role)
  pdf.lineWidth(width).strokeColor(colour)
  if (shape.is === 'line') drawSegment(pdf, shape)
  else if (shape.is === 'path') pdf.path(shape.d).stroke()
  else if (shape.role === 'other') drawRing(pdf, shape, WHITE)
  else if (fills[shape.role]) drawRing(pdf, shape, fills[shape.role]!)
  else pdf.circle(shape.x, shape.y, shape.r).fillColor(BLACK).fill()
}

const drawSegment = (pdf: Pdf, { x1, y1, x2, y2 }: LineShape) =>
  pdf.moveTo(x1, y1).lineTo(x2, y2).stroke()

function drawRing(
  pdf: Pdf,
  { x, y, r }: { readonly x: number; readonly y: number; readonly r: number },
  fill: string
) {
  pdf.circle(x, y, r).fillColor(fill).fill()
  pdf.strokeColor(BLACK).lineWidth(1).circle(x, y, r).stroke()
}

const shares = { start: 0, middle: 0.5, end: 1 } as const

function drawWord(pdf: Pdf, { x, y, text, anchor, turned = false, role }: TextShape): void {
  const style = role === 'name' ? { ...words, size: 10 } : words
  const left = x - shares[anchor] * widthOf(pdf, style, text)
  if (!turned) return drawLine(pdf, style, text, left, y)
  pdf.save().rotate(-90, { origin: [x, y] })
  drawLine(pdf, style, text, left, y)
  pdf.restore()
}
