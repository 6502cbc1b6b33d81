/** A lot's figures on curves. */

import { describe, expect, test } from 'vitest'
import { english } from '../../src/documents/languages/tongue.ts'
import { lotCurves } from '../../src/documents/lot-curves.ts'
import { measured } from '../../src/metrology/estimate.ts'
import type { JudgedRow } from '../../src/judge/types.ts'
import type { QuantityName } from '../../src/quantities.ts'
import { pageOf, publicSite } from './demo.ts'

const figure = (quantity: QuantityName, value: number, more: object = {}): JudgedRow => ({
  quantity,
  scope: 'lot mean',
  result: {
    quantity,
    estimate: measured(value, 1, 'by hand'),
    n: 3,
    each: [],
    readings: [],
    field: [],
    trace: () => ({ formula: '', source: '', inputs: [], instrumentOf: {}, notes: [] }),
    ...more
  }
})

const sieve = [
  figure('retained75_percent', 96),
  figure('retained300_percent', 81),
  figure('retained150_percent', 93)
]

describe('curves', () => {
  test('sieves: what passes, from the finest to the coarsest, each with its uncertainty', () => {
    const [curve, ...rest] = lotCurves(sieve)
    expect(rest).toEqual([])
    expect(curve!.summary).toMatch(/^What passes each of 3 sieves from 75 µm to 300 µm, /u)
    const shapes = curve!.drawing.shapes
    const dots = shapes.flatMap(shape => (shape.is === 'dot' ? [shape] : []))
    expect(dots.map(({ of }) => of)).toEqual([
      'retained75_percent',
      'retained150_percent',
      'retained300_percent'
    ])
    // 4, 7 and 19 % pass: the coarser the sieve the higher, in proportion.
    const [low, middle, high] = dots.map(({ y }) => y) as [number, number, number]
    expect((low - middle) / (low - high)).toBeCloseTo(3 / 15, 2)
    const through = shapes.find(shape => shape.is === 'path' && shape.role === 'trace')
    expect(through).toMatchObject({
      d: `M${dots.map(({ x, y }) => `${x},${y}`).join('L')}`
    })
    expect(shapes.filter(({ role }) => role === 'whisker')).toHaveLength(3)
  })

  test('none of two figures, nor of one below its limit or without readings of its own', () => {
    const [first, second, third] = sieve as [JudgedRow, JudgedRow, JudgedRow]
    expect(lotCurves([first, second])).toEqual([])
    expect(lotCurves([first, second, figure(third.quantity, 3, { below: 4 })])).toEqual([])
    const report = { number: '1', date: '2026-01-02', by: 'L', value: '3' }
    expect(lotCurves([first, second, figure(third.quantity, 3, { report })])).toEqual([])
  })

  test('the demo has both, where results are public', () => {
    const curves = pageOf(publicSite, 'EB-26-015').document.curves ?? []
    expect(curves.map(({ title }) => title)).toEqual([
      english.series.curves.sieve.title,
      english.series.curves.expansion.title
    ])
    for (const { summary } of curves) expect(summary).not.toMatch(/undefined|NaN|\[object/u)
    expect(pageOf(publicSite, 'FL-26-012').document).not.toHaveProperty('curves')
  })
})
