/** One figure against another: a mark for each thing, with strokes for how surely both are known. */

import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { axisNames, type Field, levelAxis, type Scale, uprightAxis, uprightGrid } from './axes.ts'
import type { Drawing, Shape } from './drawing.ts'
import { extent, round, segment } from './shapes.ts'

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
const field: Field = { left: 46, right: WIDTH - 10, top: 24, bottom: HEIGHT - 40, ticks: 5 }

/**
 * Draw a chart of at least one point; `names` are those of the axes, with their units.
 *
 * @param isJoined whether a line runs through the points, in their order
 */
export function drawScatterChart(
  points: readonly ScatterPoint[],
  names: { readonly x: string; readonly y: string },
  isJoined = false
): Drawing {
  const x = scaleLinear(extent(points.flatMap(({ x, halfX }) => [x - halfX, x + halfX])), [
    field.left,
    field.right
  ]).nice(field.ticks)
  const y = scaleLinear(extent(points.flatMap(({ y, halfY }) => [y - halfY, y + halfY])), [
    field.bottom,
    field.top
  ]).nice(field.ticks)
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      ...uprightGrid(x, field),
      ...levelAxis(x, field),
      ...uprightAxis(y, field),
      ...axisNames(names, field, HEIGHT),
      ...(isJoined ? [lineThrough(points, x, y)] : []),
      // Dots lie over rings.
      ...[...points]
        .sort((a, b) => Number(a.isOwn) - Number(b.isOwn))
        .flatMap(point => pointShapes(point, x, y))
    ]
  }
}

function lineThrough(points: readonly ScatterPoint[], scaleX: Scale, scaleY: Scale): Shape {
  const path = line<ScatterPoint>()
    .x(({ x }) => scaleX(x))
    .y(({ y }) => scaleY(y))
    .digits(1)
  return { is: 'path', role: 'trace', d: path([...points]) ?? '' }
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
