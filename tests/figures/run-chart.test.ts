/** Following a chart's strokes gives back the figures it was drawn from. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DotShape, LineShape, Shape, TextShape } from '../../src/figures/drawing.ts'
import { drawRunChart, type RunChart } from '../../src/figures/run-chart.ts'

const dots = (shapes: readonly Shape[]) =>
  shapes.filter((shape): shape is DotShape => shape.is === 'dot')
const lines = (shapes: readonly Shape[], role: string) =>
  shapes.filter((shape): shape is LineShape => shape.is === 'line' && shape.role === role)
const words = (shapes: readonly Shape[]) =>
  shapes.filter((shape): shape is TextShape => shape.is === 'text')

/** Heights to figures, by the words beside the axis alone: as a reader does. */
function readerOf(shapes: readonly Shape[]): (y: number) => number {
  const marks = lines(shapes, 'grid')
  const axis = words(shapes).filter(({ anchor, turned }) => anchor === 'end' && !turned)
  const valueOf = ({ text }: TextShape) => Number(text.replace('−', '-').replaceAll(',', ''))
  const [a, b] = [0, marks.length - 1].map(index => ({
    y: marks[index]!.y1,
    value: valueOf(axis[index]!)
  }))
  return y => a!.value + ((y - a!.y) * (b!.value - a!.value)) / (b!.y - a!.y)
}

const chartOf = (values: readonly number[], more: Partial<RunChart> = {}): RunChart => ({
  points: values.map((value, index) => ({ name: `L-${index}`, value, isSignal: false })),
  levels: [],
  curves: [],
  height: 300,
  ...more
})

describe('dots', () => {
  test('stand where their figures are, from left to right', () => {
    const figures = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 2, maxLength: 60 })
    fc.assert(
      fc.property(figures, values => {
        fc.pre(new Set(values).size > 1)
        const { shapes, width, height } = drawRunChart(chartOf(values))
        const read = readerOf(shapes)
        const span = Math.max(...values) - Math.min(...values)
        const found = dots(shapes)
        found.forEach(({ x, y }, index) => {
          // Lengths are rounded to a tenth of a point, 200 points for the whole span.
          expect(Math.abs(read(y) - values[index]!)).toBeLessThan(span / 500 + 0.05)
          expect(x).toBeGreaterThan(found[index - 1]?.x ?? 0)
          expect(x < width && y < height && y > 0).toBe(true)
        })
      })
    )
  })

  test('are joined by one line in their order', () => {
    const { shapes } = drawRunChart(chartOf([3, 1, 2]))
    const trace = shapes.find(({ role }) => role === 'trace')
    const corners = trace?.is === 'path' ? trace.d.slice(1).split('L') : []
    expect(corners).toEqual(dots(shapes).map(({ x, y }) => `${x},${y}`))
  })

  test('carry a stroke as long as they are uncertain', () => {
    const points = [
      { name: 'a', value: 10, half: 2, isSignal: false },
      { name: 'b', value: 20, isSignal: true }
    ]
    const { shapes } = drawRunChart(chartOf([], { points }))
    const read = readerOf(shapes)
    const whiskers = lines(shapes, 'whisker')
    expect(whiskers).toHaveLength(1)
    expect(read(whiskers[0]!.y1)).toBeCloseTo(8, 0)
    expect(read(whiskers[0]!.y2)).toBeCloseTo(12, 0)
    expect(dots(shapes).map(({ role, of }) => [role, of])).toEqual([
      ['plain', 'a'],
      ['signal', 'b']
    ])
  })
})

describe('names', () => {
  const named = (shapes: readonly Shape[]) =>
    words(shapes).flatMap(({ turned, text }) => (turned ? [text] : []))

  test('of every lot where there is room, else of the signals', () => {
    const values = Array.from({ length: 41 }, (_, index) => index % 5)
    expect(named(drawRunChart(chartOf(values.slice(1))).shapes)).toHaveLength(40)
    const { points } = chartOf(values)
    const signalled = points.map((point, index) => ({ ...point, isSignal: index === 7 }))
    expect(named(drawRunChart(chartOf([], { points: signalled })).shapes)).toEqual(['L-7'])
  })
})

describe('levels', () => {
  test('lie at their figure, inside the frame, and never write over each other', () => {
    const levels = [
      { value: 5, role: 'bound', name: 'maximum' },
      { value: 4.99, role: 'control', name: 'upper limit' },
      { value: 4.98, role: 'centre', name: 'centre' },
      { value: -40, role: 'control', name: 'lower limit' }
    ] as const
    const { shapes } = drawRunChart(chartOf([1, 2, 3], { levels }))
    const read = readerOf(shapes)
    for (const { value, role } of levels)
      expect(lines(shapes, role).some(({ y1 }) => Math.abs(read(y1) - value) < 0.2)).toBe(true)
    const heights = words(shapes)
      .filter(({ anchor }) => anchor === 'start')
      .map(({ y }) => y)
    expect(heights).toHaveLength(4)
    heights.slice(1).forEach((y, index) => expect(y - heights[index]!).toBeGreaterThanOrEqual(13))
  })

  test('a curve follows its own figures', () => {
    const { shapes } = drawRunChart(
      chartOf([1, 3], { curves: [{ role: 'average', values: [2, 2] }] })
    )
    const average = shapes.find(({ role }) => role === 'average')
    const ys = average?.is === 'path' ? average.d.match(/(?<=,)[\d.]+/gu)!.map(Number) : []
    expect(ys.map(readerOf(shapes))).toEqual([expect.closeTo(2, 1), expect.closeTo(2, 1)])
  })
})

test('one figure, or equal ones, still have a scale', () => {
  for (const values of [[5], [5, 5], [0, 0]])
    for (const { y } of dots(drawRunChart(chartOf(values)).shapes))
      expect(Number.isFinite(y)).toBe(true)
})
