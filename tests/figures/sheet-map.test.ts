/** Following a map's strokes gives back places and figures. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DotShape, PathShape, TextShape } from '../../src/figures/drawing.ts'
import { drawSheetMap, type MapSpot, shadeOf, type SheetMap } from '../../src/figures/sheet-map.ts'

const mapOf = (spots: readonly MapSpot[], length = 90, width = 60): SheetMap => ({
  length,
  width,
  lengthText: `length ${length} mm`,
  widthText: `width ${width} mm`,
  spots
})

function read(map: SheetMap) {
  const { shapes, width, height } = drawSheetMap(map)
  const dots = shapes.filter((shape): shape is DotShape => shape.is === 'dot')
  const names = shapes.filter(
    (shape): shape is TextShape => shape.is === 'text' && shape.role === 'name'
  )
  const outline = shapes.find((shape): shape is PathShape => shape.is === 'path')!
  const [left, top, right, bottom] = /^M(.+),(.+)H(.+)V(.+)H/u.exec(outline.d)!.slice(1).map(Number)
  return { dots, names, width, height, left: left!, top: top!, right: right!, bottom: bottom! }
}

const spot = fc.record({
  x: fc.double({ min: 0, max: 90, noNaN: true }),
  y: fc.double({ min: 0, max: 60, noNaN: true }),
  text: fc.constant('0.500'),
  shade: fc.constant('shade-3' as const)
})

test('dots stand at their places on the outline, y upwards', () => {
  fc.assert(
    fc.property(fc.array(spot, { minLength: 1, maxLength: 9 }), spots => {
      const { dots, left, right, top, bottom } = read(mapOf(spots))
      for (const [index, { x, y }] of spots.entries()) {
        expect(((dots[index]!.x - left) / (right - left)) * 90).toBeCloseTo(x, 0)
        expect(((bottom - dots[index]!.y) / (bottom - top)) * 60).toBeCloseTo(y, 0)
      }
    })
  )
})

test('the outline has the shape of the sheet, however long', () => {
  for (const [length, width] of [
    [90, 60],
    [1000, 50],
    [100, 1000]
  ] as const) {
    const { left, right, top, bottom, width: wide, height } = read(mapOf([], length, width))
    expect((right - left) / (bottom - top)).toBeCloseTo(length / width, 0)
    expect(right).toBeLessThan(wide)
    expect(bottom).toBeLessThan(height)
  }
})

describe('figures', () => {
  const grid = [0, 45, 90].flatMap(x =>
    [0, 30, 60].map(y => ({ x, y, text: '0.512', shade: 'shade-1' as const }))
  )
  test('touch neither a dot nor each other nor the edge of the drawing', () => {
    const { dots, names, width } = read(mapOf(grid))
    for (const name of names) {
      expect(name.x).toBeGreaterThan(15)
      expect(name.x).toBeLessThan(width - 15)
      for (const { x, y, r } of dots)
        expect(Math.abs(x - name.x) > 15 + r || name.y - 9 >= y + r || name.y <= y - r).toBe(true)
      for (const other of names)
        if (other !== name)
          expect(Math.abs(other.x - name.x) > 30 || Math.abs(other.y - name.y) > 9).toBe(true)
    }
  })

  test('of two readings at one place are both there', () => {
    const twice = [grid[0]!, grid[0]!]
    expect(read(mapOf(twice)).dots.every(({ r }) => r > 2)).toBe(true)
  })
})

test.for([
  [0, 'shade-1'],
  [0.19, 'shade-1'],
  [0.5, 'shade-3'],
  [0.81, 'shade-5'],
  [1, 'shade-5']
] as const)('%f of the way from least to greatest: %s', ([part, shade]) => {
  expect(shadeOf(0.4 + 0.2 * part, 0.4, 0.6)).toBe(shade)
  expect(shadeOf(0.5, 0.5, 0.5)).toBe('shade-3')
})
