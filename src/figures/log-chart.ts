/** Temperatures over time: a curve for each log, named at its end, with levels drawn across. */

import { type ScaleLinear, scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import type { Drawing, Role, Shape } from './drawing.ts'
import { round, segment, word } from './shapes.ts'

/** Solid, dashed, dotted, or pale for what stands there to compare with. */
export type CurveRole = Extract<Role, 'log-own' | 'log-other' | 'log-bare' | 'log-standard'>

export interface LogCurve {
  /** What its shapes are `of`. */
  readonly name: string
  readonly role: CurveRole
  readonly points: readonly (readonly [x: number, y: number])[]
}

export interface LogChart {
  readonly curves: readonly LogCurve[]
  readonly level?: { readonly value: number; readonly name: string }
  /** Names of the axes, with their units. */
  readonly names: { readonly x: string; readonly y: string }
}

/** Lengths in points. */
const WIDTH = 720
const HEIGHT = 380
const LEFT = 46
const RIGHT = 110
const TOP = 24
const BOTTOM = 40
const TICK = 4
const TICKS = 6

/** Least distance of two words side by side, set upwards. */
const LEADING = 12

type Scale = ScaleLinear<number, number>

/** Draw a chart of at least one curve of two points. */
export function drawLogChart({ curves, level, names }: LogChart): Drawing {
  const points = curves.flatMap(curve => curve.points)
  const most = (values: readonly number[]) => Math.max(...values)
  const x = scaleLinear([0, most(points.map(([at]) => at))], [LEFT, WIDTH - RIGHT])
  const y = scaleLinear(
    [0, most([...points.map(([, height]) => height), level?.value ?? 0])],
    [HEIGHT - BOTTOM, TOP]
  ).nice(TICKS)
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      ...acrossAxis(x, names.x),
      ...uprightAxis(y, names.y),
      ...(level ? levelShapes(level, y) : []),
      ...curves.map(one => curveShape(one, x, y)),
      ...curveNames(curves, x, y)
    ]
  }
}

function acrossAxis(scale: Scale, name: string): Shape[] {
  const base = HEIGHT - BOTTOM
  const format = scale.tickFormat(TICKS)
  return [
    segment('axis', LEFT, base, WIDTH - RIGHT, base),
    ...scale.ticks(TICKS).flatMap(tick => {
      const at = round(scale(tick))
      return [
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
        segment('axis', LEFT - TICK, at, LEFT, at),
        segment('grid', LEFT, at, WIDTH - RIGHT, at),
        word('label', LEFT - TICK - 3, at + 4, format(tick), 'end')
      ]
    }),
    word('label', 4, 12, name, 'start')
  ]
}

function levelShapes({ value, name }: NonNullable<LogChart['level']>, y: Scale): Shape[] {
  const at = round(y(value))
  return [
    segment('bound', LEFT, at, WIDTH - RIGHT, at),
    word('label', WIDTH - RIGHT + 6, at + 4, name, 'start')
  ]
}

function curveShape({ name: of, role, points }: LogCurve, x: Scale, y: Scale): Shape {
  const path = line<readonly [number, number]>()
    .x(([at]) => x(at))
    .y(([, height]) => y(height))
    .digits(1)
  return { is: 'path', role, of, d: path([...points]) ?? '' }
}

/**
 * Names set upwards above the ends of their curves, each a line off from the one before; that of a
 * curve to compare with stands behind its end.
 */
function curveNames(curves: readonly LogCurve[], x: Scale, y: Scale): Shape[] {
  const ends = curves.flatMap(({ name, role, points }) => {
    const [at, height] = points.at(-1)!
    return [{ name, role, at: round(x(at)), height: round(y(height)) }]
  })
  let last = -Infinity
  return ends
    .sort((a, b) => a.at - b.at)
    .map(({ name: of, role, at, height }): Shape => {
      if (role === 'log-standard') return { ...word('label', at + 6, height + 4, of, 'start'), of }
      last = Math.max(at + 4, last + LEADING)
      return { ...word('name', last, height - 8, of, 'start'), of, turned: true }
    })
}
