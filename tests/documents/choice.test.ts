/** From a need to a grade: what stands beside it, and what is told of stock to whom. */

import { describe, expect, test } from 'vitest'
import { lotsForSale } from '../../src/documents/lots-for-sale.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { WINDOW } from '../../src/judge/watched.ts'
import { demoFiles, judged } from '../records-on-disk.ts'
import { publicSite, workshopSite } from './demo.ts'

const gradeIn = (site: SiteDocument, id: string) =>
  site.choice.flatMap(({ grades }) => grades).find(grade => grade.id === id)!

describe('needs', () => {
  test('stand beside certified limits and typical figures of each grade of their kind', () => {
    expect(publicSite.choice.map(({ id }) => id)).toEqual(['foil', 'flake'])
    const { cells } = gradeIn(publicSite, 'flake-250')
    const volume = cells.find(({ key }) => key === 'expansion-volume')!
    expect([volume.limit!.printed, volume.typical!.printed]).toEqual(['≥ 250', '265.7 to 284.8'])
    for (const { needs, grades } of publicSite.choice)
      for (const grade of grades)
        expect(grade.cells.map(({ key }) => key)).toEqual(needs.map(({ key }) => key))
  })

  test('that no grade answers to are left out', () => {
    for (const { needs, grades } of publicSite.choice)
      for (const [index] of needs.entries())
        expect(grades.some(({ cells }) => cells[index]!.limit || cells[index]!.typical)).toBe(true)
  })
})

describe('released lots', () => {
  test('are all counted, more than are looked at for typical figures', () => {
    const { evaluated, lots } = judged(demoFiles)
    const one = lots.find(({ evaluated: { lot } }) => lot === 'FL-26-001')!
    const many = Array.from({ length: 2 * WINDOW }, (_, index) => ({
      ...one,
      evaluated: { ...one.evaluated, lot: `FL-26-${1000 + index}` }
    }))
    const content = evaluated!.content
    const sold = lotsForSale({ content, lots: many, asOf: '2026-10-29', graph: undefined })
    expect(sold('foil-100').map(({ lot }) => lot)).toEqual(
      many.map(({ evaluated: { lot } }) => lot).reverse()
    )
    expect(sold('foil-070')).toEqual([])
  })
})

describe('stock', () => {
  test('is told to customers only where the grade says so, and never how much', () => {
    const hidden = gradeIn(publicSite, 'flake-250')
    expect(hidden.lots.length).toBeGreaterThan(3)
    expect(hidden.lots.filter(({ stock }) => stock !== undefined)).toEqual([])
    expect(hidden.supply).toMatch(/^\d+ lots released$/u)
    const shown = gradeIn(publicSite, 'foil-100')
    expect(shown.supply).toMatch(/^\d+ lots released, (?:\d+|none) in stock$/u)
    const told = shown.lots.flatMap(({ stock }) => stock ?? [])
    expect(told.length).toBeGreaterThan(0)
    expect(new Set(told)).toEqual(new Set(['in stock']))
  })

  test('is told by mass in the workshop, of the same lots', () => {
    const lotsOf = (site: SiteDocument) =>
      gradeIn(site, 'foil-100').lots.flatMap(({ lot, stock }) => (stock ? [lot] : []))
    expect(lotsOf(workshopSite)).toEqual(lotsOf(publicSite))
    const masses = gradeIn(workshopSite, 'flake-250').lots.flatMap(({ stock }) => stock ?? [])
    expect(masses.length).toBeGreaterThan(0)
    expect(masses.filter(text => !/^\d+(?:\.\d+)? k?g$/u.test(text))).toEqual([])
  })

  test('of lots that are not released is nobody’s to choose from', () => {
    const states = new Map(publicSite.summaries.map(({ lot, state }) => [lot, state]))
    for (const { grades: list } of publicSite.choice)
      for (const { lots } of list)
        expect(lots.filter(({ lot }) => states.get(lot) !== 'released')).toEqual([])
  })
})
