/**
 * Where everything on a label stands: on the smallest label that holds it, in the largest type that
 * fits, never below the least sizes. Lengths in millimetres, from the label's upper left corner.
 */

import type { LabelContent, LabelDocument } from '../documents/label-types.ts'
import { qrFigure } from '../figures/qr.ts'
import { arrange, arrangements } from './label-arrange.ts'
import type { Measure } from './label-text.ts'
import { X_HEIGHT } from './label-text.ts'
import type { PlacedItem } from './label-items.ts'

export interface LabelLayout {
  readonly width: number
  readonly height: number
  /** Size of the body type. */
  readonly size: number
  readonly items: readonly PlacedItem[]
}

/** A text that fits on no label of a size, at the least size of type. */
export class LabelTooSmall extends Error {
  constructor(document: LabelDocument, size: readonly [number, number]) {
    super(
      `the text of the label does not fit on ${size[0]} × ${size[1]} mm at the least size of type (${document.title})`
    )
    this.name = 'LabelTooSmall'
  }
}

/** Sizes of type to try, in times the least one. */
const STEPS = [1.5, 1.4, 1.3, 1.2, 1.15, 1.1, 1.05, 1] as const

/** Above the least height, so that no rounding falls below it. */
const MARGIN_mm = 0.005

/**
 * Set a label.
 *
 * @param size width and height of the label in stock; without it, the least size that will do
 * @throws LabelTooSmall where it fits on none
 */
export function layoutLabel(
  document: LabelDocument,
  measure: Measure,
  size?: readonly [number, number]
): LabelLayout {
  const [fullest, ...less] = document.contents
  const [least, ...larger] = size ? [size] : document.sizes_mm
  const last = less.at(-1) ?? fullest!
  // A container too small for all of it gets less, before it gets a larger label.
  const tries: [LabelContent, readonly [number, number]][] = [
    ...document.contents.map((content): [LabelContent, readonly [number, number]] => [
      content,
      least!
    ]),
    ...larger.map((sides): [LabelContent, readonly [number, number]] => [last, sides])
  ]
  for (const [content, sides] of tries) {
    const found = layoutOn(document, content, measure, sides, size !== undefined)
    if (found) return found
  }
  throw new LabelTooSmall(document, larger.at(-1) ?? least!)
}

function layoutOn(
  { minima }: LabelDocument,
  content: LabelContent,
  measure: Measure,
  [first, second]: readonly [number, number],
  isFixed: boolean
): LabelLayout | undefined {
  const least = (minima.xHeight_mm + MARGIN_mm) / X_HEIGHT
  const modules = content.code ? qrFigure(content.code.url).size : 0
  const upright = { width: first, height: second }
  const sides = isFixed ? [upright] : [{ width: second, height: first }, upright]
  const set = (step: number, isJoined: boolean): LabelLayout | undefined => {
    for (const kind of arrangements)
      for (const side of sides) {
        const size = least * step
        const { leading, pictogram_mm: pictogram } = minima
        const how = { ...side, kind, isJoined, size, modules, leading, pictogram }
        const items = arrange(content, measure, how)
        if (items) return { ...side, size, items }
      }
    return undefined
  }
  // Most labels too small are told by the closest setting.
  if (!set(1, true)) return undefined
  for (const isJoined of [false, true])
    for (const step of STEPS) {
      const found = set(step, isJoined)
      if (found) return found
    }
  return undefined
}
