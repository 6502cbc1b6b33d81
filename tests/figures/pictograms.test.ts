/** Hazard pictograms: the frame's measures, and symbols that stay inside it. */

import { describe, expect, test } from 'vitest'
import { classEntry, classNames } from '../../src/hazards/classes.ts'
import { circle, polygon, star, stroke } from '../../src/figures/path.ts'
import { isPictogram, pictogram, WHITE_REACH } from '../../src/figures/pictograms.ts'
import { symbols } from '../../src/figures/symbols.ts'

const codes = Object.keys(symbols).filter(isPictogram)

/** Every point a path names: curves stay within the hull of theirs; arcs are taken apart by hand. */
function pointsOf(path: string): (readonly [number, number])[] {
  const arcs = [...path.matchAll(/A(\S+) \S+ 0 1 0 (\S+) ([\d.-]+)/gu)]
  if (arcs.length > 0) {
    const r = Number(arcs[0]![1])
    const [, x, y] = /M(\S+) (\S+)A/u.exec(path)!.map(Number) as [number, number, number]
    const centre = [x + r, y] as const
    return [0, 1, 2, 3, 4, 5, 6, 7].map(eighth => {
      const angle = (eighth * Math.PI) / 4
      return [centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)] as const
    })
  }
  const numbers = path.match(/-?\d+(?:\.\d+)?/gu)!.map(Number)
  return numbers.flatMap((x, index) => (index % 2 === 0 ? [[x, numbers[index + 1]!] as const] : []))
}

describe.each(codes)('%s', code => {
  const { parts, title } = pictogram(code)

  test('has a red frame of 0.0785 of its side around white, then its symbol', () => {
    const [frame, inside, ...symbol] = parts
    expect(frame).toEqual({ path: 'M50 0L100 50L50 100L0 50Z', ink: 'red' })
    expect(inside).toEqual({ path: 'M50 7.85L92.15 50L50 92.15L7.85 50Z', ink: 'white' })
    expect(symbol.length).toBeGreaterThan(0)
    expect(symbol[0]!.ink).toBe('black')
    expect(symbol.every(({ ink }) => ink !== 'red')).toBe(true)
    expect(title).toMatch(/^[A-Z][a-z ]+$/u)
  })

  test('keeps its symbol off the frame', () => {
    for (const { path } of symbols[code])
      for (const [x, y] of pointsOf(path))
        expect(Math.abs(x - 50) + Math.abs(y - 50), path).toBeLessThan(WHITE_REACH)
  })

  test('fills a fair part of the white square', () => {
    const all = symbols[code].flatMap(({ path }) => pointsOf(path))
    const height = Math.max(...all.map(([, y]) => y)) - Math.min(...all.map(([, y]) => y))
    const width = Math.max(...all.map(([x]) => x)) - Math.min(...all.map(([x]) => x))
    expect(Math.max(height, width)).toBeGreaterThan(WHITE_REACH)
  })

  test('is written in numbers a renderer can read', () => {
    for (const { path } of parts) expect(path).toMatch(/^M[\d .\-LCAZ]+Z$/u)
  })
})

test('every pictogram a class carries can be drawn, and no two are alike', () => {
  const carried = new Set(classNames.flatMap(name => classEntry(name).pictogram ?? []))
  expect([...carried].filter(code => !isPictogram(code))).toEqual([])
  expect(new Set(codes.map(code => JSON.stringify(symbols[code]))).size).toBe(codes.length)
  expect(isPictogram('constructor')).toBe(false)
})

test('outlines', () => {
  expect(
    polygon([
      [0, 0],
      [1, 0.005],
      [1, 1]
    ])
  ).toBe('M0 0L1 0.01L1 1Z')
  expect(circle([5, 5], 2)).toBe('M3 5A2 2 0 1 0 7 5A2 2 0 1 0 3 5Z')
  expect(stroke([0, 0], [10, 0], 2, 1)).toBe('M0 1L10 0.5L10 -0.5L0 -1Z')
  expect(star([0, 0], 2, 2, 1)).toBe('M0 -2L1 0L0 2L-1 0Z')
})
