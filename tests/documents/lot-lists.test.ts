import { describe, expect, test } from 'vitest'
import { LOTS_ON_A_PAGE, lotLists } from '../../src/documents/lot-lists.ts'
import { lotPage } from '../fixtures/documents.ts'

const lotsOf = (count: number, year: string, grade = 'flake-50') =>
  Array.from({ length: count }, (_, index) => ({
    ...lotPage.summary,
    lot: `${year}-${String(index).padStart(4, '0')}`,
    made: `${year}-03-01`,
    grade
  }))

describe('lists of lots', () => {
  const { lists, years, byGrade, states } = lotLists([
    ...lotsOf(5, '2025', 'foil'),
    ...lotsOf(2 * LOTS_ON_A_PAGE + 1, '2026')
  ])

  test('go over pages of a bounded length, every lot on one of them, newest first', () => {
    const of2026 = lists.filter(({ title }) => title === '2026')
    expect(of2026.map(({ lots }) => lots.length)).toEqual([LOTS_ON_A_PAGE, LOTS_ON_A_PAGE, 1])
    const numbers = of2026.flatMap(({ lots }) => lots.map(({ lot }) => lot))
    expect(numbers).toEqual([...new Set(numbers)].sort().reverse())
  })

  test('lead from page to page', () => {
    const [one, two, three] = lists.filter(({ title }) => title === 'flake-50')
    expect(one).toMatchObject({ url: 'grades/flake-50/lots/', next: two!.url, last: three!.url })
    expect(one).not.toHaveProperty('previous')
    expect(two).toMatchObject({ first: one!.url, previous: one!.url, next: three!.url, page: 2 })
    expect(three).not.toHaveProperty('next')
    expect(new Set(lists.map(({ url }) => url)).size).toBe(lists.length)
  })

  test('are named with how many stand in each', () => {
    expect(years.map(({ name, count }) => [name, count])).toEqual([
      ['2026', 2 * LOTS_ON_A_PAGE + 1],
      ['2025', 5]
    ])
    expect(byGrade.map(({ name }) => name)).toEqual(['flake-50', 'foil'])
    expect(states).toEqual(['released'])
  })

  test('of what has no grade stand under its year alone', () => {
    expect(lotLists(lotsOf(1, '2026', '')).lists.map(({ url }) => url)).toEqual(['years/2026/'])
  })
})
