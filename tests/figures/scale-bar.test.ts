import fc from 'fast-check'
import { expect, test } from 'vitest'
import { barLength_mm, drawScaleBar } from '../../src/figures/scale-bar.ts'

test.each([
  [12.8, 2],
  [4.8, 1],
  [0.24, 0.05],
  [100, 20],
  [0.0034, 0.001]
])('a picture %d mm wide has a bar of %d mm', (width, length) => {
  expect(barLength_mm(width)).toBeCloseTo(length, 9)
})

test('the bar takes between a tenth and a third of the width, and is as long as it says', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.0001, max: 30_000, noNaN: true }), width => {
      const length = barLength_mm(width)
      expect(length / width).toBeGreaterThan(0.11)
      expect(length / width).toBeLessThanOrEqual(0.3 + 1e-9)
      const drawing = drawScaleBar(width, length)
      const bar = drawing.shapes[0]!
      if (bar.is === 'line') expect(bar.x2 / drawing.width).toBeCloseTo(length / width, 3)
      expect(bar.is).toBe('line')
    })
  )
})
