/** Texts of a label broken into lines. Lengths in millimetres. */

import type { Face } from './fonts.ts'

export const MM_PER_POINT = 25.4 / 72

/** Height of a lower-case x in Inter, in sizes of type: the same in both faces. */
export const X_HEIGHT = 1118 / 2048

/** Width of a text set in a face at size 1. */
export type Measure = (face: Face, text: string) => number

/** Part of a text that a line may end behind. */
interface Piece {
  readonly text: string
  /** Width at size 1, and the same without a space at its end. */
  readonly width: number
  readonly ink: number
}

/** Where a line may end: after a space, or a stroke between choices. */
const PIECES = /[^ /]*\/+ ?|[^ /]+ ?| /gu

/** Least signs of a word on either side of a break that no space or stroke allows. */
const LEAST = 3

/** A label is set at many sizes before one is chosen: its pieces are measured once. */
const measured = new WeakMap<Measure, Map<string, readonly Piece[]>>()

function piecesOf(measure: Measure, face: Face, text: string): readonly Piece[] {
  const known = measured.get(measure) ?? new Map<string, readonly Piece[]>()
  measured.set(measure, known)
  const key = `${face} ${text}`
  const pieces =
    known.get(key) ?? (text.match(PIECES) ?? []).map(part => piece(measure, face, part))
  known.set(key, pieces)
  return pieces
}

const piece = (measure: Measure, face: Face, text: string): Piece => ({
  text,
  width: measure(face, text),
  ink: measure(face, text.trimEnd())
})

/** Break a text into lines no wider than `width`. */
export function breakLines(
  measure: Measure,
  face: Face,
  size: number,
  text: string,
  width: number
): string[] {
  const most = width / size
  const lines: string[] = []
  let line = ''
  let used = 0
  for (const whole of piecesOf(measure, face, text))
    for (const part of whole.ink <= most ? [whole] : cut(measure, face, whole.text, most)) {
      if (line !== '' && used + part.ink > most) {
        lines.push(line)
        line = ''
        used = 0
      }
      line += part.text
      used += part.width
    }
  return [...lines, line.trimEnd()]
}

/** A piece wider than a line, as parts that each fit. */
function cut(measure: Measure, face: Face, text: string, most: number): Piece[] {
  const whole = piece(measure, face, text)
  const signs = [...text]
  if (whole.ink <= most || signs.length <= 2 * LEAST) return [whole]
  let end = signs.length - LEAST
  while (end > LEAST && measure(face, signs.slice(0, end).join('')) > most) end -= 1
  return [
    piece(measure, face, signs.slice(0, end).join('')),
    ...cut(measure, face, signs.slice(end).join(''), most)
  ]
}
