/** The quick search held against what finding means, over lots and questions of all kinds. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { writeCodes, writeDays, writeLists, writeNames } from '../../src/archive/columns.ts'
import { readFigures } from '../../src/archive/figures.ts'
import { finderOf } from '../../src/archive/find.ts'
import { type LotList, readLots } from '../../src/archive/lots.ts'
import { noQuery, type Query } from '../../src/archive/query.ts'
import { foundPlainly } from './plainly.ts'

/** So few signs that numbers hold each other, and begin and end alike. */
const number = fc
  .tuple(
    fc.constantFrom('EB', 'FL', 'E', 'ß'),
    fc.constantFrom('-', '.', '', ' '),
    fc.stringMatching(/^[12]{1,3}$/u),
    fc.constantFrom('', '-1', '.2', '-EB1', '-')
  )
  .map(parts => parts.join(''))

const grades = [
  { id: 'flake-100', title: 'Flake 100', description: 'Expandable flake, coarse' },
  { id: 'foil-1', title: 'Foil 1', description: 'Flexible foil' },
  { id: 'gräphit', title: 'Graphit', description: '' }
]

const lot = fc.record({
  number,
  made: fc.constantFrom('2030-01-02', '2030-01-02', '2031-12-31', '2031-02-01'),
  kind: fc.constantFrom('expandable graphite', 'foil'),
  grade: fc.constantFrom('flake-100', 'foil-1', 'gräphit', 'unlisted', ''),
  state: fc.constantFrom('released', 'withdrawn', 'quarantine'),
  answer: fc.constantFrom('pass', 'conditional pass', 'fail', 'not judged'),
  certificates: fc.array(fc.constantFrom('CT-1', 'CT-12', 'CT-2 r2'), { maxLength: 2 }),
  from: fc.array(number, { maxLength: 2 }),
  thickness: fc.constantFrom('', '0.4', '0.50', '0.5', '<0.5', '-1', '12')
})

type Lot = typeof lot extends fc.Arbitrary<infer Value> ? Value : never

function listOf(lots: readonly Lot[]): LotList {
  const codes = (key: 'kind' | 'grade' | 'state' | 'answer') =>
    writeCodes(lots.map(one => one[key]))
  return readLots({
    format: 1,
    lots: writeNames(lots.map(one => one.number)),
    made: writeDays(lots.map(one => one.made)),
    kind: codes('kind'),
    grade: codes('grade'),
    state: codes('state'),
    answer: codes('answer'),
    chief: writeCodes(lots.map(() => 'thickness')),
    certificates: writeLists(lots.map(one => one.certificates)),
    from: writeLists(lots.map(one => one.from)),
    grades,
    quantities: [{ key: 'thickness', title: 'Thickness', unit: 'mm' }],
    parts: [lots.length]
  })
}

/** Newest first, as every list is written. */
const lots = fc
  .array(lot, { maxLength: 40, size: 'max' })
  .map(all => all.sort((a, b) => (a.made < b.made ? 1 : a.made > b.made ? -1 : 0)))

/** Any piece of something that is there, or what people type beside it. */
const typed = fc.oneof(
  fc
    .tuple(number, fc.nat(5), fc.nat(6))
    .map(([text, from, length]) => text.slice(from, from + length)),
  number.map(text => text.toLowerCase()),
  number.map(text => ` ${text.replace(/[-.]/gu, ' ')} `),
  fc
    .tuple(
      fc.constantFrom('released', 'foil', 'relased', 'expandabel', 'graphit', 'ct-1', 'coarse'),
      fc.constantFrom('', ' ', ' foil', ' 1', ' eb', ' 2031', ' pass', ' -', '\n1')
    )
    .map(parts => parts.join('')),
  fc.constantFrom('', ' ', '-', '.', '2031-1', 'zzz', '\n', '1\nE', '12 12')
)

const bound = fc.constantFrom('', '0.5', '0,45', '-1', '12 mm', 'thick')

const query: fc.Arbitrary<Query> = fc.record({
  text: typed,
  grade: fc.constantFrom('', '', '', 'foil-1', 'no such grade'),
  year: fc.constantFrom('', '', '2031'),
  state: fc.constantFrom('', '', 'released'),
  ranges: fc.oneof(
    fc.constant(new Map()),
    fc.record({ from: bound, to: bound }).map(range => new Map([['thickness', range]]))
  ),
  sort: fc.record({
    by: fc.constantFrom('made', 'lot', 'grade', 'state', 'answer', 'thickness'),
    down: fc.boolean()
  }),
  chosen: fc.constant([])
})

const columnOf = (all: readonly Lot[]) =>
  readFigures({
    values: all.map(one => one.thickness).join(','),
    uncertainties: all.map(() => '').join(',')
  })

test('the same lots in the same order, however often and after whatever it was asked', () => {
  fc.assert(
    fc.property(lots, fc.array(query, { minLength: 1, maxLength: 6 }), (all, queries) => {
      const list = listOf(all)
      const finder = finderOf(list)
      // Figures come when they are first asked for: the same questions without them, then with them.
      for (const columns of [new Map(), new Map([['thickness', columnOf(all)]])])
        for (const one of queries)
          expect([...finder.find(one, columns)], JSON.stringify(one.text)).toEqual(
            foundPlainly(list, one, columns)
          )
    }),
    { numRuns: 300 }
  )
})

test('each letter of a number leaves its lot among those found, and the last brings it to the top', () => {
  fc.assert(
    fc.property(lots, all => {
      const list = listOf(all)
      const finder = finderOf(list)
      for (const number of new Set(list.lots))
        for (let end = 1; end <= number.length; end += 1) {
          const rows = [...finder.find({ ...noQuery, text: number.slice(0, end) }, new Map())]
          expect(rows.map(row => list.lots[row])).toContain(number)
          if (end === number.length)
            expect(list.lots[rows[0]!]!.toLowerCase()).toBe(number.toLowerCase())
        }
    }),
    { numRuns: 30 }
  )
})
