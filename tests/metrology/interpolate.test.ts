import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { curveThrough, linearAt } from '../../src/metrology/interpolate.ts'

describe('a straight line between nodes', () => {
  test.for([
    [0, 1],
    [1, 3],
    [1.5, 4],
    [3, 7],
    [4, 9],
    [-1, -1]
  ] as const)('at %f', ([x, y]) => {
    expect(linearAt([0, 1, 3], [1, 3, 7], x)).toBe(y)
  })

  test('a table of one node is that node everywhere', () => {
    expect(linearAt([5], [2], 17)).toBe(2)
  })
})

/** PchipInterpolator of SciPy 1.17.1. */
const scipy = [
  [
    [0, 1, 2, 4, 5, 7, 8],
    [0, 1, 1, 5, 4.5, 4.5, 9]
  ],
  [
    [0, 1, 3],
    [0, 2, 2.5]
  ],
  [
    [0, 1, 2],
    [0, 1, -9]
  ]
] as const

describe('a smooth curve through nodes', () => {
  const expected = [
    [0, 0.3, 0.4365],
    [0, 1.5, 1.0],
    [0, 2.5, 1.625],
    [0, 3.9, 4.971],
    [0, 4.6, 4.676],
    [0, 6, 4.5],
    [0, 7.2, 4.776],
    [1, 0.25, 0.6529771959],
    [1, 0.75, 1.7401815878],
    [1, 2, 2.3716216216],
    [1, 2.9, 2.4986858108],
    [2, 0.25, 0.578125],
    [2, 0.75, 0.984375],
    [2, 1.5, -2.0625]
  ] as const
  test.for(expected)('SciPy: table %i at %f', ([table, x, y]) => {
    const [xs, ys] = scipy[table]
    expect(curveThrough(xs, ys)(x)).toBeCloseTo(y, 9)
  })

  test('meets its nodes and overshoots none', () => {
    const nodes = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: -99, max: 99 })),
      {
        minLength: 3,
        maxLength: 12
      }
    )
    fc.assert(
      fc.property(nodes, fc.double({ min: 0, max: 1, noNaN: true }), (steps, part) => {
        let at = 0
        const xs = steps.map(([step]) => (at += step))
        const ys = steps.map(([, y]) => y)
        const curve = curveThrough(xs, ys)
        xs.forEach((x, i) => expect(curve(x)).toBeCloseTo(ys[i]!, 8))
        for (let i = 1; i < xs.length; i += 1) {
          const y = curve(xs[i - 1]! + part * (xs[i]! - xs[i - 1]!))
          expect(y).toBeGreaterThanOrEqual(Math.min(ys[i - 1]!, ys[i]!) - 1e-8)
          expect(y).toBeLessThanOrEqual(Math.max(ys[i - 1]!, ys[i]!) + 1e-8)
        }
      })
    )
  })
})
