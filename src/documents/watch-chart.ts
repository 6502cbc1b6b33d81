/** The charts of one quantity, with their words. */

import { type ChartLevel, type ChartPoint, drawRunChart } from '../figures/run-chart.ts'
import type { WatchedProcess } from '../judge/watch.ts'
import type { WatchedFigure } from '../judge/watched.ts'
import { placesFor, roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import type { Bounds } from '../quality/judge.ts'
import { sampleOf } from '../quality/sample.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { spokenDrawing } from './spoken-drawing.ts'
import { withMinus } from './words.ts'
import type { ChartText } from './watch-types.ts'

export interface ChartInputs {
  readonly key: string
  /** 'Expansion volume, mL/g'. */
  readonly title: string
  readonly figures: readonly WatchedFigure[]
  /** The grade's limit, digits as written. */
  readonly bounds: Bounds
  /** Absent where only the figures are shown. */
  readonly process?: WatchedProcess
  /** English where nothing is said; limits of the process are told in English alone. */
  readonly tongue?: Tongue
}

/** A number at the place of the second digit of what it scatters by. */
export function atScatter(
  values: readonly number[],
  { numbers } = english
): (value: number) => string {
  const s = values.length > 1 ? sampleOf(values).s : 0
  const places = placesFor(s === 0 ? (values[0] ?? 1) : s, 2)
  return value => numbers.number(withMinus(roundToPlaces(toDecimal(value), places)))
}

/** Heights in points. */
const HIGH = 300
const LOW = 200

/** The chart of the figures and, where limits could be drawn, that of their moving ranges. */
export function chartsOf(inputs: ChartInputs): ChartText[] {
  const { figures, process, key, title, tongue = english } = inputs
  if (figures.length < 2) return []
  const { levels, outside } = levelsOf(inputs)
  const signals = signalled(process)
  const drawing = drawRunChart({
    points: figures.map(figure => pointOf(figure, signals)),
    levels,
    curves: process?.average
      ? [{ role: 'average', values: process.average.map(({ value }) => value) }]
      : [],
    height: HIGH
  })
  return [
    {
      id: `${key}-figures`,
      title,
      summary: summaryOf(inputs, levels, outside),
      drawing: spokenDrawing(drawing, tongue)
    },
    ...(process?.chart ? [rangesOf(inputs, process.chart, title)] : [])
  ]
}

const signalled = (process: WatchedProcess | undefined) =>
  new Set((process?.seen ?? []).filter(({ warns }) => warns).map(({ at }) => at.lot))

const pointOf = ({ lot, value, U }: WatchedFigure, signals: ReadonlySet<string>): ChartPoint => ({
  name: lot,
  value,
  half: U,
  isSignal: signals.has(lot)
})

/** Times the spread of the figures that a bound may lie off before it is only told, not drawn. */
const FAR = 2

/** Levels to draw, and the bounds too far off, which would press the figures into a line. */
function levelsOf({ figures, bounds: { min, max }, process, tongue = english }: ChartInputs) {
  const { series, numbers } = tongue
  const said = (bound: string) => numbers.number(withMinus(bound))
  const reach = figures.flatMap(({ value, U }) => [value - U, value + U])
  const [low, high] = [Math.min(...reach), Math.max(...reach)]
  const room = FAR * (high - low)
  const bounds: ChartLevel[] = [
    ...(min === undefined
      ? []
      : [{ value: Number(min), role: 'bound', name: series.minimum(said(min)) } as const]),
    ...(max === undefined
      ? []
      : [{ value: Number(max), role: 'bound', name: series.maximum(said(max)) } as const])
  ]
  const isNear = ({ value }: ChartLevel) => value >= low - room && value <= high + room
  return {
    levels: [...bounds.filter(isNear), ...controlLevels(process)],
    outside: bounds.filter(bound => !isNear(bound)).map(({ name }) => name)
  }
}

function controlLevels(process: WatchedProcess | undefined): ChartLevel[] {
  if (!process?.chart) return []
  const { lower, centre, upper } = process.chart
  return [
    { value: lower, role: 'control', name: 'lower limit' },
    { value: centre, role: 'centre', name: 'centre' },
    { value: upper, role: 'control', name: 'upper limit' }
  ]
}

/** What the chart shows, in words: the figures themselves stand in the table. */
function summaryOf(
  { figures, process, tongue = english }: ChartInputs,
  levels: readonly ChartLevel[],
  outside: readonly string[]
): string {
  const values = figures.map(({ value }) => value)
  const text = atScatter(values, tongue)
  const { series } = tongue
  const drawn = levels.map(({ name, value, role }) =>
    role === 'bound' ? name : `${name} ${text(value)}`
  )
  return [
    series.inOrder(figures.length, text(Math.min(...values)), text(Math.max(...values))),
    drawn.length > 0 ? series.lines(drawn) : '',
    process?.average ? 'The thin curve is the moving average.' : '',
    outside.length > 0 ? series.tooFar(outside) : ''
  ]
    .filter(Boolean)
    .join(' ')
}

function rangesOf(
  { key, figures }: ChartInputs,
  { ranges, rangeLimits }: NonNullable<WatchedProcess['chart']>,
  title: string
): ChartText {
  const points = ranges.map((value, index) => ({
    name: figures[index + 1]!.lot,
    value,
    isSignal: value > rangeLimits.upper
  }))
  const text = atScatter(ranges)
  const out = points.filter(({ isSignal }) => isSignal).map(({ name }) => name)
  return {
    id: `${key}-ranges`,
    title: `${title}: distance of each lot from the one before`,
    summary: `Mean range ${text(rangeLimits.centre)}, upper limit ${text(rangeLimits.upper)}. ${out.length > 0 ? `Above it: ${out.join(', ')}.` : 'None above it.'}`,
    drawing: drawRunChart({
      points,
      levels: [
        { value: rangeLimits.centre, role: 'centre', name: 'mean range' },
        { value: rangeLimits.upper, role: 'control', name: 'upper limit' }
      ],
      curves: [],
      height: LOW
    })
  }
}
