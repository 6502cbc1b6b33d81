import { describe, expect, test } from 'vitest'
import { anyLimited, exceptions, hasKey, newestFirst, ofBasis } from '../../src/html/filters.ts'
import { figureFilters } from '../../src/html/shapes.ts'
import { lotDocument, lotPage } from '../fixtures/documents.ts'

const { resultShapes, tableShapes } = figureFilters('.')

const lot = (number: string, made: string) => ({ ...lotPage.summary, lot: number, made })

const lots = [
  lot('EB-25-002', '2025-12-31'),
  lot('EB-26-002', '2026-01-05'),
  lot('EB-26-010', '2026-01-05'),
  lot('EB-26-001', '2026-01-02')
]

describe('lists of lots', () => {
  test('stand newest first, the later number first within a day', () => {
    const numbers = newestFirst(lots).map(summary => summary.lot)
    expect(numbers).toEqual(['EB-26-010', 'EB-26-002', 'EB-26-001', 'EB-25-002'])
  })

  test('leave what they were given as it was', () => {
    const given = [...lots]
    newestFirst(given)
    expect(given).toEqual(lots)
  })
})

describe('rows of a lot', () => {
  test('are told apart by basis', () => {
    const keys = (basis: Parameters<typeof ofBasis>[1]) =>
      ofBasis(lotDocument.results, basis).map(row => row.key)
    expect(keys('measured')).toEqual(['expansion-volume', 'free-acid', 'slurry-ph', 'foil-density'])
    expect(keys('typical')).toEqual(['ash'])
    expect(keys('not measured')).toEqual(['moisture'])
  })

  test('are exceptions when judged other than pass', () => {
    expect(exceptions(lotDocument.results).map(row => row.key)).toEqual(['free-acid', 'slurry-ph'])
  })

  test('have a limit among them or none', () => {
    expect(anyLimited(lotDocument.results)).toBe(true)
    expect(anyLimited(ofBasis(lotDocument.results, 'typical'))).toBe(false)
    expect(anyLimited([])).toBe(false)
  })

  test('have a working or none', () => {
    expect(hasKey(lotDocument.workings, 'expansion-volume')).toBe(true)
    expect(hasKey(lotDocument.workings, 'ash')).toBe(false)
  })
})

describe('shapes', () => {
  test('of results go by column', () => {
    expect(resultShapes(lotDocument.results)).toEqual({
      value: { places: 3, rest: 0 },
      uncertainty: { places: 4, rest: 0 },
      coverage: { places: 2, rest: 0 },
      limit: { places: 2, rest: 0 },
      probability: { places: 1, rest: 0 }
    })
  })

  test('of a table go by column, a short row counting as empty', () => {
    const columns = [1, 2].map(() => ({ title: 'Mass', numeric: true }))
    expect(tableShapes({ caption: '', columns, rows: [['0.5 g', '12'], ['31 g']] })).toEqual([
      { places: 1, rest: 2 },
      { places: 0, rest: 0 }
    ])
  })
})
