/** A drawing's own numbers, such as those along its axes, as readers of a language see them. */

import type { Drawing } from '../figures/drawing.ts'
import type { Tongue } from './languages/tongue.ts'

/** Digits with a point, and nothing else: names of lots are none. */
const NUMBER = /^[−+]?\d+\.?\d*$/u

/** The drawing with its numbers worded; names, which stand for something, are left as they are. */
export const spokenDrawing = (drawing: Drawing, { language, numbers }: Tongue): Drawing =>
  language === 'en'
    ? drawing
    : {
        ...drawing,
        shapes: drawing.shapes.map(shape =>
          shape.is === 'text' && shape.of === undefined && NUMBER.test(shape.text)
            ? { ...shape, text: numbers.number(shape.text) }
            : shape
        )
      }
