/** Following a chart's strokes gives back the logs it was drawn from. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { LineShape, PathShape, Shape, TextShape } from '../../src/figures/drawing.ts'
import { drawLogChart, type LogCurve } from '../../src/figures/log-chart.ts'

const NAMES = { x: 'minutes', y: '°C' }
const words = (shapes: readonly Shape[]) =>
  shapes.filter((shape): shape is TextShape => shape.is === 'text')
const lines = (shapes: readonly Shape[], role: string) =>
  shapes.filter((shape): shape is LineShape => shape.is === 'line' && shape.role === role)
const paths = (shapes: readonly Shape[]) =>
  shapes.filter((shape): shape is PathShape => shape.is === 'path')

/** A scale by two of its marks: what stands at the first and at the last word of an axis. */
function scaleBy(marks: readonly { readonly at: number; readonly value: number }[]) {
  const [a, b] = [marks[0]!, marks.at(-1)!]
  return (at: number) => a.value + ((at - a.at) * (b.value - a.value)) / (b.at - a.at)
}

/** Reads an axis as a reader does: by the numbers beside it. */
function readers(shapes: readonly Shape[]) {
  const numbers = words(shapes)
    .filter(({ role, text }) => role === 'label' && /^[\d,.]+$/u.test(text))
    .map(word => ({ ...word, value: Number(word.text.replaceAll(',', '')) }))
  const across = numbers.filter(({ anchor }) => anchor === 'middle')
  const upright = numbers.filter(({ anchor }) => anchor === 'end')
  return {
    x: scaleBy(across.map(({ x, value }) => ({ at: x, value }))),
    y: scaleBy(upright.map(({ y, value }) => ({ at: y - 4, value })))
  }
}

const pointsOf = ({ d }: PathShape) =>
  d.split(/[ML]/u).flatMap(part => {
    const [x, y] = part.split(',').map(Number)
    return x === undefined || y === undefined ? [] : [[x, y] as const]
  })

const heats = fc.array(fc.integer({ min: 20, max: 900 }), { minLength: 3, maxLength: 40 })

test('a curve stands where its log was', () => {
  fc.assert(
    fc.property(heats, temperatures => {
      const points = temperatures.map((temperature, index): [number, number] => [
        index / 2,
        temperature
      ])
      const { shapes, width, height } = drawLogChart({
        curves: [{ name: 'PN-1', role: 'log-own', points }],
        level: { value: 500, name: 'stated' },
        names: NAMES
      })
      const read = readers(shapes)
      const drawn = pointsOf(paths(shapes)[0]!)
      expect(drawn).toHaveLength(points.length)
      const off = drawn.map(([x, y], index) => {
        const [at, temperature] = points[index]!
        expect(x > 0 && x < width && y > 0 && y < height).toBe(true)
        return [Math.abs(read.x(x) - at), Math.abs(read.y(y) - temperature)]
      })
      // Lengths are rounded to a tenth of a point.
      expect(Math.max(...off.map(([x]) => x!))).toBeLessThan(0.02 * points.at(-1)![0])
      expect(Math.max(...off.map(([, y]) => y!))).toBeLessThan(3)
      expect(read.y(lines(shapes, 'bound')[0]!.y1)).toBeCloseTo(500, -1)
    })
  )
})

describe('names', () => {
  const curve = (name: string, end: number, role: LogCurve['role'] = 'log-own'): LogCurve => ({
    name,
    role,
    points: [
      [0, 20],
      [end, 500]
    ]
  })

  test('stand at the ends of their curves and never on each other', () => {
    const curves = [curve('PN-1', 10), curve('PN-2', 10.01), curve('PN-3', 4), curve('PN-4', 10)]
    const { shapes } = drawLogChart({ curves, names: NAMES })
    const named = words(shapes).filter(({ turned }) => turned)
    expect(named.map(({ text }) => text).sort()).toEqual(['PN-1', 'PN-2', 'PN-3', 'PN-4'])
    const places = named.map(({ x }) => x).sort((a, b) => a - b)
    for (const [index, x] of places.entries())
      if (index > 0) expect(x - places[index - 1]!).toBeGreaterThanOrEqual(12)
    const ends = new Map(paths(shapes).map(path => [path.of, pointsOf(path).at(-1)![0]]))
    expect(named.find(({ text }) => text === 'PN-3')!.x).toBeCloseTo(ends.get('PN-3')! + 4, 0)
  })

  test('of a curve to compare with stand behind it, level', () => {
    const { shapes } = drawLogChart({
      curves: [curve('PN-1', 10), curve('standard', 10, 'log-standard')],
      names: NAMES
    })
    const standard = words(shapes).find(({ text }) => text === 'standard')!
    expect([standard.turned, standard.anchor]).toEqual([undefined, 'start'])
    expect(paths(shapes).map(({ role }) => role)).toEqual(['log-own', 'log-standard'])
  })

  test('of the axes tell their units', () => {
    const { shapes } = drawLogChart({ curves: [curve('PN-1', 10)], names: NAMES })
    const texts = words(shapes).map(({ text }) => text)
    expect(texts).toEqual(expect.arrayContaining(['minutes', '°C', 'PN-1']))
  })
})
