/** Differences held against the program's own propagation, and against cases done by hand. */

import papaparse from 'papaparse'
import { describe, expect, test } from 'vitest'
import { scriptWords } from '../../src/archive/words.ts'
import { differenceOf, type KnownFigure, type KnownLot } from '../../src/archive/compare.ts'
import { compareLots, comparisonTable, differenceText } from '../../src/archive/comparison.ts'
import { csvOf } from '../../src/archive/plain-csv.ts'
import { strokesOf } from '../../src/archive/strip.ts'
import { knownLotsText, numbering } from '../../src/data/known-lots.ts'
import { lotListWriter } from '../../src/data/lot-list.ts'
import type { LotPage } from '../../src/documents/types.ts'
import { expand } from '../../src/metrology/coverage.ts'
import { type Estimate, estimate, propagate } from '../../src/metrology/estimate.ts'
import { roundResult } from '../../src/metrology/rounding.ts'
import { publicSite } from '../documents/demo.ts'
import { filesOf } from './lists.ts'

const bare: KnownFigure = { key: 'ash', value: '', exact: 0, method: 'TM-1, edition 1' }
const figure = (exact: number, changes: Partial<KnownFigure>): KnownFigure => ({
  ...bare,
  exact,
  ...changes
})

describe('a difference', () => {
  test('of independent figures has both their uncertainties', () => {
    const one = figure(10, { u: 0.3, df: 10 })
    const other = figure(8.7, { u: 0.4, df: 20 })
    // u = 0.5; ν = 0.5⁴ / (0.3⁴/10 + 0.4⁴/20) = 29.8 → 29; t = 2.0452
    expect(differenceOf(one, other)).toEqual({
      is: 'larger',
      printed: '+1.3',
      uncertainty: '1.0',
      notes: ['apart']
    })
    expect(differenceOf(other, one).printed).toBe('−1.3')
    expect(differenceOf(figure(9.7, { u: 0.4, df: 20 }), one).is).toBe('not larger')
  })

  test('loses what both have in common, and keeps what differs in sign', () => {
    const shared = (sign: number) => [
      { pool: 1, by: { 7: sign * 3 } },
      { pool: 2, own: 0.01 }
    ]
    const one = figure(10, { parts: shared(1) })
    expect(differenceOf(one, figure(9, { parts: shared(1) }))).toMatchObject({
      is: 'larger',
      uncertainty: '0.28',
      notes: []
    })
    expect(differenceOf(one, figure(9, { parts: shared(-1) })).is).toBe('not larger')
  })

  test('cannot be said of bounds, and of figures without an uncertainty', () => {
    const sure = figure(1, { u: 0.1 })
    for (const [other, note] of [
      [figure(0.5, { below: true, u: 0.1 }), 'below'],
      [figure(0.5, {}), 'unstated']
    ] as const)
      for (const pair of [
        [sure, other],
        [other, sure]
      ] as const) {
        const difference = differenceOf(...pair)
        expect(difference).toEqual({ is: 'unknown', notes: [note] })
        expect(differenceText(difference, '%')).toBe(`cannot be said (${scriptWords[note]})`)
      }
  })

  test('by different methods says so', () => {
    const other = figure(1, { u: 0.1, method: 'TM-1, edition 2' })
    expect(differenceOf(figure(2, { u: 0.1 }), other).notes).toContain('methods')
  })
})

describe('the demo’s lots', () => {
  const pages = [...publicSite.lots]
  const known = filesOf(pages, lotListWriter(publicSite)).known
  const estimateOf = (page: LotPage, key: string): Estimate | undefined => {
    const causes = page.budgets?.[key]
    const row = page.document.results.find(row => row.key === key)
    return (
      causes &&
      estimate(
        Number(row!.value!.exact),
        causes.map(({ name, pool, exact: u, df }) => ({
          cause: { name, pool, kind: 'B', df: df ?? Infinity },
          u
        }))
      )
    )
  }

  test('differ by what propagating a − b over their common causes gives', () => {
    let compared = 0
    let correlated = 0
    for (const [at, page] of pages.entries()) {
      const other = pages[(at + 3) % pages.length]!
      const [one, two] = [known[page.document.lot]!, known[other.document.lot]!]
      for (const mine of one.figures) {
        const theirs = two.figures.find(({ key }) => key === mine.key)
        const [a, b] = [estimateOf(page, mine.key), estimateOf(other, mine.key)]
        if (!theirs || !a || !b) continue
        const difference = propagate(({ a, b }) => a! - b!, { a, b })
        const { U } = expand(difference)
        const rounded = roundResult(difference.value, U)
        const got = differenceOf(mine, theirs)
        expect(got.uncertainty, `${page.document.lot} ${mine.key}`).toBe(rounded.U)
        expect(got.is).toBe(Math.abs(difference.value) > U ? 'larger' : 'not larger')
        compared += 1
        const apart = Math.hypot(expand(a).U, expand(b).U)
        if (U < 0.9 * apart) correlated += 1
      }
    }
    expect(compared).toBeGreaterThan(60)
    expect(correlated).toBeGreaterThan(10)
  })

  test('name no cause, and none of a lot whose working is not published', () => {
    const text = knownLotsText(pages, numbering())
    expect(text).not.toMatch(/calibration|tolerance|resolution|repeatability|reading/u)
    const [{ budgets: _, ...closed }] = [pages[0]!]
    expect(knownLotsText([closed], numbering())).not.toContain('"parts"')
  })

  test('stand beside each other in a table that another program reads', () => {
    const lots: KnownLot[] = ['FL-26-010', 'FL-26-012', 'FL-26-013'].map(lot => known[lot]!)
    const quantities = [
      { key: 'thickness', title: 'Thickness', unit: 'mm' },
      { key: 'foil-density', title: 'Foil density', unit: 'g/cm³' },
      { key: 'compressibility', title: '=1+1', unit: '%' }
    ]
    const { data, errors } = papaparse.parse(csvOf(comparisonTable(lots, quantities)), {
      header: true,
      skipEmptyLines: true
    })
    expect(errors).toEqual([])
    const pairs = data.filter(row => row['compared with'])
    expect(pairs).toHaveLength(6)
    expect(data.filter(row => row['quantity'] === "'=1+1")).not.toEqual([])
    const row = pairs.find(row => row['lot'] === 'FL-26-012' && row['quantity'] === 'Foil density')!
    expect(row).toMatchObject({
      'compared with': 'FL-26-010',
      'differ by': 'more than they are uncertain'
    })
    expect(Number(row['difference'])).toBeCloseTo(0.0252, 4)
  })

  test('have rows that can be compared first', () => {
    const lots = ['FL-26-010', 'FL-26-013'].map(lot => known[lot]!)
    const quantities = ['recovery', 'thickness'].map(key => ({ key, title: key, unit: '' }))
    const rows = compareLots(lots, quantities, 0)
    expect(rows.map(({ quantity }) => quantity.key)).toEqual(['thickness', 'recovery'])
    expect(rows[0]!.cells[0]).not.toHaveProperty('difference')
    expect(rows[0]!.cells[1]).toHaveProperty('difference')
  })
})

describe('strokes', () => {
  test('of a row share one scale that holds every interval', () => {
    const strokes = strokesOf([
      figure(10, { uncertainty: '1' }),
      undefined,
      figure(14, { uncertainty: '2' }),
      figure(3, { below: true })
    ])
    expect(strokes.map(stroke => stroke !== undefined)).toEqual([true, false, true, false])
    const [one, , two] = strokes
    expect(one!.from).toBeCloseTo(0.06)
    expect(two!.to).toBeCloseTo(0.94)
    expect((two!.at - one!.at) / (two!.to - one!.from)).toBeCloseTo(4 / 7)
  })

  test('of one figure alone, or of equal ones, need no scale', () => {
    expect(strokesOf([figure(1, {}), undefined])).toEqual([undefined, undefined])
    expect(strokesOf([figure(1, {}), figure(1, {})]).map(stroke => stroke!.at)).toEqual([0.5, 0.5])
  })
})
