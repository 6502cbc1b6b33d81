import { expect, test } from 'vitest'
import { drawStandingStrip, type StandingStrip } from '../../src/figures/standing-strip.ts'

const strip: StandingStrip = {
  value: 20,
  half: 5,
  others: [10, 30, 14],
  bounds: [],
  ends: ['10', '30']
}

const shapesOf = (changes: Partial<StandingStrip> = {}) =>
  drawStandingStrip({ ...strip, ...changes }).shapes

const ticksIn = (shapes: ReturnType<typeof shapesOf>) =>
  shapes.flatMap(shape =>
    shape.is === 'path' ? [...shape.d.matchAll(/M([\d.]+),/gu)].map(([, x]) => Number(x)) : []
  )

test('places are in proportion to figures', () => {
  const shapes = shapesOf()
  const [least, middle, greatest] = ticksIn(shapes)
  const dot = shapes.find(shape => shape.is === 'dot')!
  expect(dot.x).toBeCloseTo((least! + greatest!) / 2, 0)
  expect((middle! - least!) / (greatest! - least!)).toBeCloseTo(0.2, 2)
  const whisker = shapes.find(shape => shape.role === 'whisker')!
  expect(whisker).toMatchObject({ is: 'line' })
  if (whisker.is === 'line')
    expect((whisker.x2 - whisker.x1) / (greatest! - least!)).toBeCloseTo(0.5, 2)
})

test('a limit near by is drawn at its place, one far off is not', () => {
  const bounds = (of: readonly number[]) =>
    shapesOf({ bounds: of }).filter(({ role }) => role === 'bound')
  expect(bounds([5, 45])).toHaveLength(2)
  expect(bounds([-100, 200])).toEqual([])
  const shapes = shapesOf({ bounds: [10] })
  expect(shapes.find(({ role }) => role === 'bound')).toMatchObject({ x1: ticksIn(shapes)[0] })
})

test('nothing leaves the strip, wherever the figure lies', () => {
  for (const value of [10, 20, 1000, -1000])
    for (const others of [
      [1, 2, 3],
      [5, 5, 5],
      [999, 1001]
    ]) {
      const { width, height, shapes } = drawStandingStrip({ ...strip, value, others })
      for (const shape of shapes) {
        const xs =
          shape.is === 'line'
            ? [shape.x1, shape.x2]
            : shape.is === 'path'
              ? ticksIn([shape])
              : [shape.x]
        for (const x of xs) expect(x >= 0 && x <= width).toBe(true)
        if (shape.is === 'text') expect(shape.y).toBeLessThanOrEqual(height)
      }
    }
})

test('lots of one figure are one tick; ends near each other share their words', () => {
  expect(ticksIn(shapesOf({ others: [7, 7, 7] }))).toHaveLength(1)
  const words = (others: readonly number[]) =>
    shapesOf({ others, value: 500 }).flatMap(shape => (shape.is === 'text' ? [shape.text] : []))
  expect(words([10, 11, 12])).toEqual(['10 … 30'])
  expect(words([10, 400, 900])).toEqual(['10', '30'])
})
