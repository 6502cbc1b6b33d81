/** A bar as long as a round length in a picture of known width. */

import type { Drawing } from './drawing.ts'
import { round, segment } from './shapes.ts'

/** Width of the drawing, in points: as wide as the picture, whatever that is shown at. */
const WIDTH = 400
const HEIGHT = 12
const MIDDLE = 6
const END = 4

/** Part of the picture's width that the bar may take. */
const MOST = 0.3

const steps = [5, 2, 1]

/** Powers of ten a bar may have, in mm: from 1 nm to 10 m. */
const decades = [10000, 1000, 100, 10, 1, 0.1, 0.01, 0.001, 0.0001, 0.00001, 0.000001]

/**
 * The longest of 1, 2, 5, 10 … mm that takes no more than a third of the width.
 *
 * @param width_mm what the whole picture is wide, from 0.00001 mm
 */
export const barLength_mm = (width_mm: number): number =>
  decades
    .flatMap(decade => steps.map(step => step * decade))
    .find(length => length <= MOST * width_mm) ?? decades.at(-1)!

/** Draw it, from the left edge of the picture. */
export function drawScaleBar(width_mm: number, length_mm: number): Drawing {
  const end = round((WIDTH * length_mm) / width_mm)
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      segment('whisker', 1, MIDDLE, end, MIDDLE),
      segment('bound', 1, MIDDLE - END, 1, MIDDLE + END),
      segment('bound', end, MIDDLE - END, end, MIDDLE + END)
    ]
  }
}
