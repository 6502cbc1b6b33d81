/** Temperatures over time: a curve for each log, named at its end, with levels drawn across. */

import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { axisNames, type Field, levelAxis, type Scale, uprightAxis } from './axes.ts'
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
const field: Field = { left: 46, right: WIDTH - 110, top: 24, bottom: HEIGHT - 40, ticks: 6 }

/** Least distance of two words side by side, set upwards. */
const LEADING = 12

/** Draw a chart of at least one curve of two points. */
export function drawLogChart({ curves, level, names }: LogChart): Drawing {
  const points = curves.flatMap(curve => curve.points)
  const most = (values: readonly number[]) => Math.max(...values)
  const x = scaleLinear([0, most(points.map(([at]) => at))], [field.left, field.right])
  const y = scaleLinear(
    [0, most([...points.map(([, height]) => height), level?.value ?? 0])],
    [field.bottom, field.top]
  ).nice(field.ticks)
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      ...levelAxis(x, field),
      ...uprightAxis(y, field),
      ...axisNames(names, field, HEIGHT),
      ...(level ? levelShapes(level, y) : []),
      ...curves.map(one => curveShape(one, x, y)),
      ...curveNames(curves, x, y)
    ]
  }
}

function levelShapes({ value, name }: NonNullable<LogChart['level']>, y: Scale): Shape[] {
  const at = round(y(value))
  return [
    segment('bound', field.left, at, field.right, at),
    word('label', field.right + 6, at + 4, name, 'start')
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
