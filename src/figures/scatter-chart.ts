/** One figure against another: a mark for each thing, with strokes for how surely both are known. */

import { type ScaleLinear, scaleLinear } from 'd3-scale'
import type { Drawing, Shape } from './drawing.ts'
import { extent, round, segment, word } from './shapes.ts'

export interface ScatterPoint {
  /** What its shapes are `of`. */
  readonly name: string
  readonly x: number
  readonly y: number
  /** Half lengths of the strokes. */
  readonly halfX: number
  readonly halfY: number
  /** A dot; a ring where not. */
  readonly isOwn: boolean
}

/** Lengths in points. */
const WIDTH = 360
const HEIGHT = 260
const LEFT = 46
const RIGHT = 10
const TOP = 24
const BOTTOM = 40
const TICK = 4
const TICKS = 5

type Scale = ScaleLinear<number, number>

/** Draw a chart of at least one point; `names` are those of the axes, with their units. */
export function drawScatterChart(
  points: readonly ScatterPoint[],
  names: { readonly x: string; readonly y: string }
): Drawing {
  const x = scaleLinear(extent(points.flatMap(({ x, halfX }) => [x - halfX, x + halfX])), [
    LEFT,
    WIDTH - RIGHT
  ]).nice(TICKS)
  const y = scaleLinear(extent(points.flatMap(({ y, halfY }) => [y - halfY, y + halfY])), [
    HEIGHT - BOTTOM,
    TOP
  ]).nice(TICKS)
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      ...levelAxis(x, names.x),
      ...uprightAxis(y, names.y),
      // Dots lie over rings.
      ...[...points]
        .sort((a, b) => Number(a.isOwn) - Number(b.isOwn))
        .flatMap(point => pointShapes(point, x, y))
    ]
  }
}

function levelAxis(scale: Scale, name: string): Shape[] {
  const base = HEIGHT - BOTTOM
  const format = scale.tickFormat(TICKS)
  return [
    segment('axis', LEFT, base, WIDTH - RIGHT, base),
    ...scale.ticks(TICKS).flatMap(tick => {
      const at = round(scale(tick))
      return [
        segment('grid', at, TOP, at, base),
        segment('axis', at, base, at, base + TICK),
        word('label', at, base + TICK + 11, format(tick), 'middle')
      ]
    }),
    word('label', WIDTH - RIGHT, HEIGHT - 5, name, 'end')
  ]
}

function uprightAxis(scale: Scale, name: string): Shape[] {
  const format = scale.tickFormat(TICKS)
  return [
    segment('axis', LEFT, TOP, LEFT, HEIGHT - BOTTOM),
    ...scale.ticks(TICKS).flatMap(tick => {
      const at = round(scale(tick))
      return [
        segment('grid', LEFT, at, WIDTH - RIGHT, at),
        segment('axis', LEFT - TICK, at, LEFT, at),
        word('label', LEFT - TICK - 3, at + 4, format(tick), 'end')
      ]
    }),
    word('label', 4, 12, name, 'start')
  ]
}

function pointShapes(point: ScatterPoint, scaleX: Scale, scaleY: Scale): Shape[] {
  const { name: of, x, y, halfX, halfY, isOwn } = point
  const [atX, atY] = [round(scaleX(x)), round(scaleY(y))]
  const whisker = (x1: number, y1: number, x2: number, y2: number): Shape => ({
    ...segment('whisker', round(x1), round(y1), round(x2), round(y2)),
    of
  })
  return [
    ...(halfX > 0 ? [whisker(scaleX(x - halfX), atY, scaleX(x + halfX), atY)] : []),
    ...(halfY > 0 ? [whisker(atX, scaleY(y - halfY), atX, scaleY(y + halfY))] : []),
    { is: 'dot', role: isOwn ? 'plain' : 'other', of, x: atX, y: atY, r: isOwn ? 3.5 : 3 }
  ]
}
