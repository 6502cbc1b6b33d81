/** Axes of charts of one figure against another, with their ticks, figures and names. */

import type { ScaleLinear } from 'd3-scale'
import type { Shape } from './drawing.ts'
import { round, segment, word } from './shapes.ts'

export type Scale = ScaleLinear<number, number>

/** The field a chart is drawn in: its edges, in points from the upper left corner of the drawing. */
export interface Field {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** About how many ticks an axis has. */
  readonly ticks: number
}

const TICK = 4

/** The axis at the foot. */
export function levelAxis(scale: Scale, { left, right, bottom, ticks }: Field): Shape[] {
  const format = scale.tickFormat(ticks)
  return [
    segment('axis', left, bottom, right, bottom),
    ...scale.ticks(ticks).flatMap(tick => {
      const at = round(scale(tick))
      return [
        segment('axis', at, bottom, at, bottom + TICK),
        word('label', at, bottom + TICK + 11, format(tick), 'middle')
      ]
    })
  ]
}

/** Lines up from the ticks of the axis at the foot. */
export const uprightGrid = (scale: Scale, { top, bottom, ticks }: Field): Shape[] =>
  scale
    .ticks(ticks)
    .map(tick => segment('grid', round(scale(tick)), top, round(scale(tick)), bottom))

/** The axis at the left, with lines across from its ticks. */
export function uprightAxis(scale: Scale, { left, right, top, bottom, ticks }: Field): Shape[] {
  const format = scale.tickFormat(ticks)
  return [
    segment('axis', left, top, left, bottom),
    ...scale.ticks(ticks).flatMap(tick => {
      const at = round(scale(tick))
      return [
        segment('grid', left, at, right, at),
        segment('axis', left - TICK, at, left, at),
        word('label', left - TICK - 3, at + 4, format(tick), 'end')
      ]
    })
  ]
}

/** Names of both axes, with their units, in a drawing of a height. */
export const axisNames = (
  names: { readonly x: string; readonly y: string },
  { right }: Field,
  height: number
): Shape[] => [
  word('label', right, height - 5, names.x, 'end'),
  word('label', 4, 12, names.y, 'start')
]
