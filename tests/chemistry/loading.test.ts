import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dryLoading, wetLoading, wetOfDry } from '../../src/chemistry/loading.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

/** By hand: m(flake) / (m(flake) + m(paint)), and the flake over flake and solids. */
test.for([
  ['1 g in 10 g of paint', 1, 10, 55, '9.1', '15.4'],
  ['the same, of all solids', 1, 10, 100, '9.1', '9.1'],
  ['2 g in 8 g of a thin paint', 2, 8, 40, '20.0', '38.5'],
  ['0.5 g in 20 g', 0.5, 20, 62.5, '2.44', '3.85']
] as const)('by hand: %s', ([, flake_g, paint_g, paintSolids_percent, wet, dry]) => {
  const loading = wetLoading(exactly({ flake_g, paint_g }))
  expect(asPrinted(loading.value, wet)).toBe(wet)
  const solids = exactly({ paintSolids_percent })
  const film = dryLoading({ wetLoading_percent: loading, ...solids })
  expect(asPrinted(film.value, dry)).toBe(dry)
})

const percent = fc.double({ min: 0.5, max: 90, noNaN: true })
const solids = fc.double({ min: 10, max: 99, noNaN: true })
const dryOf = (wet: number, s: number) =>
  dryLoading(exactly({ wetLoading_percent: wet, paintSolids_percent: s })).value
const wetOf = (dry: number, s: number) =>
  wetOfDry(exactly({ dryLoading_percent: dry, paintSolids_percent: s })).value

describe('wet and dry', () => {
  test('a film always holds more than its paint, the more the fewer its solids', () => {
    fc.assert(
      fc.property(percent, solids, fc.double({ min: 0.1, max: 9, noNaN: true }), (w, s, less) => {
        expect(dryOf(w, s)).toBeGreaterThan(w)
        expect(dryOf(w, s - less)).toBeGreaterThan(dryOf(w, s))
      })
    )
  })

  test('lead back to each other', () => {
    fc.assert(
      fc.property(percent, solids, (w, s) => {
        expect(wetOf(dryOf(w, s), s)).toBeCloseTo(w, 9)
        expect(dryOf(wetOf(w, s), s)).toBeCloseTo(w, 9)
      })
    )
  })

  test('dry is flake over flake and solids, whatever the batch', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        solids,
        (flake_g, paint_g, s) => {
          const wet = wetLoading(exactly({ flake_g, paint_g })).value
          expect(dryOf(wet, s)).toBeCloseTo((100 * flake_g) / (flake_g + (paint_g * s) / 100), 9)
          const twice = exactly({ flake_g: 2 * flake_g, paint_g: 2 * paint_g })
          expect(wetLoading(twice).value).toBeCloseTo(wet, 9)
        }
      )
    )
  })
})

test.for([
  [() => wetLoading(exactly({ flake_g: 0, paint_g: 10 })), 'flake_g must be greater than 0'],
  [() => wetLoading(exactly({ flake_g: 1, paint_g: -1 })), 'paint_g must be greater than 0'],
  [() => dryOf(100, 50), 'wetLoading_percent must be above 0 and below 100, got 100'],
  [() => dryOf(0, 50), 'wetLoading_percent must be above 0'],
  [() => dryOf(10, 0), 'paintSolids_percent must be above 0 and at most 100, got 0'],
  [() => dryOf(10, 100.1), 'paintSolids_percent must be'],
  [() => wetOf(100, 50), 'dryLoading_percent must be'],
  [() => wetOf(Number.NaN, 50), 'dryLoading_percent must be']
] as const)('refuses: %o', ([model, message]) => {
  expect(model).toThrow(message)
})

test('trials of the distributions agree', () => {
  expectLinear(wetLoading, uncertain({ flake_g: [1, 0.0024], paint_g: [10, 0.005] }))
  expectLinear(
    dryLoading,
    uncertain({ wetLoading_percent: [9.09, 0.06], paintSolids_percent: [55, 0.4] })
  )
  expectLinear(
    wetOfDry,
    uncertain({ dryLoading_percent: [15.4, 0.1], paintSolids_percent: [55, 0.6] })
  )
})
