/** Finding lots, tried on the demo's own list and on an invented one of ten thousand. */

import { beforeAll, describe, expect, test } from 'vitest'
import { readFigures } from '../../src/archive/figures.ts'
import { type Columns, finderOf } from '../../src/archive/find.ts'
import { type LotList, readLots } from '../../src/archive/lots.ts'
import { addressOf, noQuery, type Query, queryFrom } from '../../src/archive/query.ts'
import { lotListWriter } from '../../src/data/lot-list.ts'
import type { LotPage } from '../../src/documents/types.ts'
import { publicSite } from '../documents/demo.ts'
import { filesOf, listOf } from './lists.ts'

let list: LotList
let columns: Columns
/** Read once: a site makes its pages anew each time it is asked. */
let pages: readonly LotPage[]

beforeAll(() => {
  pages = [...publicSite.lots]
  const files = filesOf(pages, lotListWriter(publicSite))
  list = readLots(files.lots)
  columns = new Map(
    Object.entries(files.figures).map(([key, column]) => [key, readFigures(column)])
  )
})

const found = (changes: Partial<Query>) =>
  [...finderOf(list).find({ ...noQuery, ...changes }, columns)].map(row => list.lots[row])

const published = () => pages.map(({ document }) => document)

describe('by number', () => {
  test('every exact number finds its lot first, and so does every fragment of it that no other has', () => {
    for (const lot of list.lots) {
      expect(found({ text: lot })[0]).toBe(lot)
      expect(found({ text: ` ${lot.toLowerCase()} ` })[0]).toBe(lot)
      for (let from = 0; from < lot.length; from += 1)
        for (let to = from + 1; to <= lot.length; to += 1) {
          const part = lot.slice(from, to)
          const having = list.lots.filter(other => other.includes(part))
          const first = found({ text: part }).slice(0, having.length)
          expect([...first].sort(), part).toEqual([...having].sort())
        }
    }
  }, 30_000)

  test('an exact number stands before longer ones, whatever the order', () => {
    const small = listOf(['A-10', 'A-1', 'B-A-1', 'A-100'])
    for (const sort of [noQuery.sort, { by: 'lot', down: true }, { by: 'lot', down: false }]) {
      const rows = finderOf(small).find({ ...noQuery, text: 'a-1', sort }, new Map())
      expect(small.lots[rows[0]!]).toBe('A-1')
      expect(rows).toHaveLength(4)
    }
  })

  test('a number that is all there but for a sign stands before longer ones', () => {
    const rows = finderOf(listOf(['A-12', 'A-1-'])).find({ ...noQuery, text: 'a-1' }, new Map())
    expect([...rows]).toEqual([1, 0])
  })

  test('signs between its parts may be left out or be others', () => {
    expect(found({ text: 'EB 26 001' })[0]).toBe('EB-26-001')
    expect(found({ text: 'fl26010' })[0]).toBe('FL-26-010')
  })

  test('a lot leads to those made from it, behind itself', () => {
    const made = published().filter(
      ({ chain, lot }) => lot.startsWith('FL-') && chain.some(link => link.lot === 'EB-26-001')
    )
    expect(made.length).toBeGreaterThan(1)
    const [first, ...others] = found({ text: 'EB-26-001' })
    expect(first).toBe('EB-26-001')
    expect(others.sort()).toEqual(made.map(({ lot }) => lot).sort())
  })

  test('a certificate finds its lot', () => {
    const page = pages.find(({ certificates }) => certificates[0]?.document.number)!
    expect(found({ text: page.certificates[0]!.document.number! })).toEqual([page.document.lot])
  })
})

describe('by words', () => {
  test('all of them, in any order', () => {
    const lots = published().filter(
      ({ grade, status }) => grade?.id.startsWith('foil') && status.state === 'released'
    )
    expect(new Set(found({ text: 'released flexible' }))).toEqual(
      new Set(lots.map(({ lot }) => lot))
    )
    expect(found({ text: 'flexible released' })).toEqual(found({ text: 'released flexible' }))
  })

  test('with a letter too many or too few', () => {
    expect(found({ text: 'withdrwn' })).toEqual(['EB-26-008'])
    expect(found({ text: 'zzz' })).toEqual([])
  })

  test('signs of patterns are signs', () => {
    for (const text of ['.*', '(', '[', '\\', '$', '-', '"', '−'])
      expect(() => found({ text })).not.toThrow()
  })
})

describe('by figures', () => {
  const values = (key: string) =>
    published().flatMap(({ lot, results }) => {
      const row = results.find(row => row.key === key && row.basis === 'measured')
      return row?.value ? [{ lot, printed: row.value.printed }] : []
    })

  test('between two values, both ends as printed included', () => {
    const densities = values('foil-density')
      .map(({ printed }) => Number(printed))
      .sort()
    const [low, high] = [densities[2]!, densities[8]!]
    const wanted = values('foil-density').filter(
      ({ printed }) => Number(printed) >= low && Number(printed) <= high
    )
    const ranges = new Map([['foil-density', { from: String(low), to: String(high) }]])
    expect(found({ ranges }).sort()).toEqual(wanted.map(({ lot }) => lot).sort())
  })

  test('above one value, written with a comma or a unit', () => {
    const wanted = values('expansion-volume').filter(({ printed }) => Number(printed) >= 270.5)
    expect(wanted.length).toBeGreaterThan(2)
    for (const from of ['270.5', '270,5', ' 270.5 mL/g'])
      expect(found({ ranges: new Map([['expansion-volume', { from, to: '' }]]) })).toHaveLength(
        wanted.length
      )
  })

  test('a figure known only to be below a bound is at most that, and at least nothing', () => {
    const bound = new Map([['x', readFigures({ values: '<0.5,0.4,0.6,', uncertainties: ',,,' })]])
    const small = listOf(['A', 'B', 'C', 'D'])
    const lots = (from: string, to: string) =>
      [...finderOf(small).find({ ...noQuery, ranges: new Map([['x', { from, to }]]) }, bound)].map(
        row => small.lots[row]
      )
    expect(lots('', '0.5')).toEqual(['A', 'B'])
    expect(lots('', '0.45')).toEqual(['B'])
    expect(lots('0', '')).toEqual(['B', 'C'])
  })

  test('sorted by one, lots without it last either way', () => {
    const sorted = found({ sort: { by: 'thickness', down: false } })
    const count = values('thickness').length
    const numbers = sorted.map(lot => values('thickness').find(one => one.lot === lot)?.printed)
    expect(numbers.slice(0, count).map(Number)).toEqual(
      numbers
        .slice(0, count)
        .map(Number)
        .sort((a, b) => a - b)
    )
    expect(numbers.slice(count).every(number => number === undefined)).toBe(true)
    const down = found({ sort: { by: 'thickness', down: true } })
    expect(down.slice(count)).toEqual(sorted.slice(count))
  })
})

describe('by grade, year and status', () => {
  test('each alone and all together', () => {
    for (const { name } of publicSite.byGrade)
      expect(found({ grade: name }).sort()).toEqual(
        published()
          .filter(({ grade }) => grade?.id === name)
          .map(({ lot }) => lot)
          .sort()
      )
    expect(found({ year: '2026' })).toHaveLength(list.count)
    expect(found({ year: '2025' })).toEqual([])
    expect(found({ grade: 'flake-250', year: '2026', state: 'withdrawn' })).toEqual(['EB-26-008'])
    expect(found({ grade: 'no such grade' })).toEqual([])
  })

  test('nothing asked for is everything, newest first', () => {
    expect(found({})).toEqual(list.lots)
    const days = found({ sort: { by: 'made', down: false } }).map(
      lot => published().find(one => one.lot === lot)!.made
    )
    expect(days).toEqual([...days].sort())
  })
})

describe('the address', () => {
  const query: Query = {
    text: 'a & b = c #1',
    grade: 'foil-100',
    year: '2026',
    state: 'released',
    ranges: new Map([
      ['thickness', { from: '0,48', to: '' }],
      ['ash', { from: '', to: '.7' }],
      ['foil-density', { from: '0.95', to: '1.05' }]
    ]),
    sort: { by: 'ash', down: true },
    chosen: ['FL-26-001', 'EB.2']
  }
  const keys = ['thickness', 'ash', 'foil-density']

  test('says the whole view', () => {
    expect(queryFrom(`#${addressOf(query)}`, keys)).toEqual(query)
  })

  test('of everything says nothing', () => {
    expect(addressOf(noQuery)).toBe('')
    expect(queryFrom('', keys)).toEqual(noQuery)
    expect(queryFrom('#content', keys)).toEqual(noQuery)
  })

  test('passes over what it does not know', () => {
    const read = queryFrom('#nonsense=1..2&sort=nonsense&ash=7&with=a a b c d e f g h', keys)
    expect(read).toEqual({ ...noQuery, chosen: ['a', 'b', 'c', 'd', 'e', 'f'] })
  })
})
