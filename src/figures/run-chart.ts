/**
 * Figures in the order they were made: a dot each, joined, with levels drawn across.
 *
 * Figures stand at even distances, not by date: two lots of one day would hide each other.
 */

import { scaleLinear, type ScalePoint, scalePoint } from 'd3-scale'
import { line } from 'd3-shape'
import { type Scale, uprightAxis } from './axes.ts'
import type { Drawing, Role, Shape } from './drawing.ts'
import { extent, round, segment, word } from './shapes.ts'

export interface ChartPoint {
  /** What it is called beside its dot's foot, and what its shapes are `of`. */
  readonly name: string
  readonly value: number
  /** Half length of the stroke that shows how surely it is known. */
  readonly half?: number
  readonly isSignal: boolean
}

/** A level drawn across, named at its right end. */
export interface ChartLevel {
  readonly value: number
  readonly role: 'bound' | 'control' | 'centre'
  readonly name: string
}

/** A line without dots, one value a point. */
export interface ChartCurve {
  readonly role: 'average' | 'control'
  readonly values: readonly number[]
}

export interface RunChart {
  readonly points: readonly ChartPoint[]
  readonly levels: readonly ChartLevel[]
  readonly curves: readonly ChartCurve[]
  readonly height: number
}

/** Lengths in points. */
const WIDTH = 720
const LEFT = 56
const RIGHT = 104
const TOP = 12
const NAMES = 74
const TICKS = 5

/** With more points than this there is room for the names of the signals only. */
const MOST_NAMES = 40

/** Least distance of two words one above the other. */
const LEADING = 13

interface Scales {
  readonly x: ScalePoint<string>
  readonly y: Scale
  readonly bottom: number
}

/** Draw a chart of at least one point. */
export function drawRunChart(chart: RunChart): Drawing {
  const bottom = chart.height - NAMES
  const names = chart.points.map(({ name }) => name)
  const scales: Scales = {
    x: scalePoint(names, [LEFT, WIDTH - RIGHT]).padding(0.6),
    y: scaleLinear(extent(valuesOf(chart)), [bottom, TOP]).nice(TICKS),
    bottom
  }
  return {
    width: WIDTH,
    height: chart.height,
    shapes: [
      ...uprightAxis(scales.y, {
        left: LEFT,
        right: WIDTH - RIGHT,
        top: TOP,
        bottom,
        ticks: TICKS
      }),
      ...chart.levels.map(level => levelLine(level, scales)),
      ...levelNames(chart.levels, scales),
      ...chart.curves.map(({ role, values }) => curve(role, names, values, scales)),
      curve(
        'trace',
        names,
        chart.points.map(({ value }) => value),
        scales
      ),
      ...chart.points.flatMap(point => pointShapes(point, names.length, scales))
    ]
  }
}

/** Every value to be shown. */
const valuesOf = ({ points, levels, curves }: RunChart): number[] => [
  ...points.flatMap(({ value, half = 0 }) => [value - half, value + half]),
  ...levels.map(({ value }) => value),
  ...curves.flatMap(({ values }) => values)
]

const levelLine = ({ value, role }: ChartLevel, { y }: Scales): Shape =>
  segment(role, LEFT, round(y(value)), WIDTH - RIGHT, round(y(value)))

/** Names at the right, each at its level or, where two would touch, pushed below the one above. */
function levelNames(levels: readonly ChartLevel[], { y }: Scales): Shape[] {
  let last = -Infinity
  return [...levels]
    .sort((a, b) => b.value - a.value)
    .map(({ value, name }) => {
      last = Math.max(round(y(value)) + 4, last + LEADING)
      return word('label', WIDTH - RIGHT + 6, last, name, 'start')
    })
}

function curve(
  role: Role,
  names: readonly string[],
  values: readonly number[],
  { x, y }: Scales
): Shape {
  const path = line<number>()
    .x((_, index) => x(names[index]!)!)
    .y(value => y(value))
    .digits(1)
  return { is: 'path', role, d: path(values as number[]) ?? '' }
}

function pointShapes(point: ChartPoint, count: number, { x, y, bottom }: Scales): Shape[] {
  const { name: of, value, half = 0, isSignal } = point
  const [at, height] = [round(x(of)!), round(y(value))]
  const isNamed = count <= MOST_NAMES || isSignal
  return [
    ...(half > 0
      ? [{ ...segment('whisker', at, round(y(value - half)), at, round(y(value + half))), of }]
      : []),
    { is: 'dot', role: isSignal ? 'signal' : 'plain', of, x: at, y: height, r: isSignal ? 5 : 3 },
    ...(isNamed ? [{ ...word('name', at + 4, bottom + 8, of, 'end'), of, turned: true }] : [])
  ]
}
