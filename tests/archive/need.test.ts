/** How a grade stands to a need, row by row; and that asking for more never finds more. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Figures } from '../../src/archive/figures.ts'
import {
  answers,
  matchOf,
  type Offer,
  reasonOf,
  type Span,
  spanAt
} from '../../src/archive/need.ts'

const offer: Offer = {
  limits: new Map([
    ['ash', { to: 0.9 }],
    ['thickness', { from: 0.47, to: 0.53 }]
  ]),
  typical: new Map([['ash', { from: 0.5, to: 0.65 }]]),
  lots: [
    { lot: 'A', figures: new Map([['ash', { from: 0.4, to: 0.44 }]]) },
    { lot: 'B', figures: new Map([['ash', { from: 0.5, to: 0.6 }]]) },
    { lot: 'C', figures: new Map([['chloride', { to: 20 }]]) }
  ]
}

test('a figure leaves open what its uncertainty does, and none without one answers', () => {
  const figures: Figures = {
    printed: [
      { value: '1.00', uncertainty: '0.25' },
      { value: '< 0.5' },
      { value: '2.00' },
      undefined
    ],
    numbers: Float64Array.of(1, 0.5, 2, NaN),
    below: Uint8Array.of(0, 1, 0, 0)
  }
  expect([0, 1, 2, 3].map(row => spanAt(figures, row))).toEqual([
    { from: 0.75, to: 1.25 },
    { to: 0.5 },
    undefined,
    undefined
  ])
  expect(spanAt(undefined, 0)).toBeUndefined()
})

describe('one need', () => {
  test.each<[string, Span, string, readonly string[]]>([
    ['ash', { to: 0.9 }, 'certified', ['A', 'B', 'C']],
    ['ash', { to: 0.89 }, 'typical', ['A', 'B']],
    ['ash', { to: 0.65 }, 'typical', ['A', 'B']],
    ['ash', { to: 0.64 }, 'some lots', ['A', 'B']],
    ['ash', { to: 0.45 }, 'some lots', ['A']],
    ['ash', { to: 0.42 }, 'not met', []],
    ['ash', { from: 0.5 }, 'typical', ['B']],
    ['thickness', { from: 0.47, to: 0.53 }, 'certified', ['A', 'B', 'C']],
    ['thickness', { from: 0.48 }, 'not known', []],
    ['thickness', { from: 0.6 }, 'not met', []],
    ['thickness', { to: 0.4 }, 'not met', []],
    ['chloride', { to: 20 }, 'some lots', ['C']],
    ['chloride', { from: 1 }, 'not met', []],
    ['onset', { from: 180 }, 'not known', []]
  ])('%s %j: %s', (key, want, answer, lots) => {
    const match = matchOf(offer, new Map([[key, want]]))
    expect([match.answer, match.lots]).toEqual([answer, lots])
  })
})

test('several needs are answered by single lots that answer to each of them', () => {
  const needs = (ash: Span, chloride: Span) =>
    matchOf(offer, new Map([...Object.entries({ ash, chloride })]))
  expect(needs({ to: 0.9 }, { to: 20 })).toMatchObject({ answer: 'some lots', lots: ['C'] })
  const apart = needs({ to: 0.45 }, { to: 20 })
  expect(apart).toMatchObject({ answer: 'not known', lots: [] })
  expect(reasonOf(apart, new Map([['ash', 'Ash']]))).toMatch(
    /^Ash: [^.;]*some lots do\. Chloride: [^.;]*\. No single released lot is known to answer to all of it\.$/u
  )
})

const end = fc.option(fc.integer({ min: 0, max: 9 }), { nil: undefined })
const span = fc.tuple(end, end).map(([a, b]): Span => {
  const [from, to] = a !== undefined && b !== undefined && a > b ? [b, a] : [a, b]
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) }
})
const spans = fc
  .dictionary(fc.constantFrom('x', 'y'), span)
  .map(one => new Map(Object.entries(one)))
const offers = fc
  .record({ limits: spans, typical: spans, lots: fc.array(spans, { maxLength: 4 }) })
  .map((one): Offer => ({
    ...one,
    lots: one.lots.map((figures, index) => ({ lot: `${index}`, figures }))
  }))

test('a narrower need is never answered better, nor by another lot', () => {
  const by = fc.nat({ max: 3 })
  fc.assert(
    fc.property(offers, spans, by, by, (one, wide, up, down) => {
      const narrow = new Map(
        [...wide].map(([key, { from, to }]) => [
          key,
          { from: (from ?? 0) + up, to: (to ?? 9) - down }
        ])
      )
      const [before, after] = [matchOf(one, wide), matchOf(one, narrow)]
      expect(answers.indexOf(after.answer)).toBeGreaterThanOrEqual(answers.indexOf(before.answer))
      expect(before.lots).toEqual(expect.arrayContaining([...after.lots]))
    }),
    { numRuns: 2000 }
  )
})
