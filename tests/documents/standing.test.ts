/** A lot among the lots of its grade: counted anew from the lots' own data. */

import { describe, expect, test } from 'vitest'
import { standingOf } from '../../src/documents/standing.ts'
import type { LotPage } from '../../src/documents/types.ts'
import { lotDataOf } from '../../src/documents/lot-data.ts'
import { pageOf, publicSite, workshopSite } from './demo.ts'

const withPlace = publicSite.lots.filter(({ standing }) => standing)

interface Known {
  readonly lot: string
  readonly value: number
  readonly U: number
}

/** Figures of a grade as the lots' own pages give them. */
const figuresOf = (grade: string, key: string): Known[] =>
  publicSite.lots
    .filter(({ document }) => document.grade?.id === grade)
    .flatMap(({ document }) => {
      const row = document.results.find(one => one.key === key)
      return row?.value && row.expandedUncertainty && !row.report && !/^</u.test(row.value.printed)
        ? [
            {
              lot: document.lot,
              value: Number(row.value.exact),
              U: Number(row.expandedUncertainty.exact)
            }
          ]
        : []
    })

function placeOf({ document }: LotPage, key: string): string {
  const figures = figuresOf(document.grade!.id, key)
  const own = figures.find(({ lot }) => lot === document.lot)!
  const others = figures.filter(one => one !== own)
  const parts = { above: 0, below: 0, 'not told apart from': 0 }
  for (const { value, U } of others) {
    const apart = (own.value - value) ** 2 > own.U ** 2 + U ** 2
    parts[apart ? (value < own.value ? 'above' : 'below') : 'not told apart from']++
  }
  if (parts['not told apart from'] === others.length)
    return `not told apart from any of ${others.length}`
  const said = Object.entries(parts).flatMap(([name, n]) => (n > 0 ? [`${name} ${n}`] : []))
  return `${said.join(', ')} of ${others.length}`
}

test('what is above, below and not told apart is so by the lots’ own figures', () => {
  expect(withPlace.length).toBeGreaterThan(10)
  const seen = withPlace.flatMap(page =>
    page.standing!.figures.map(({ key, place }) => [page.document.lot, key, place])
  )
  expect(seen.length).toBeGreaterThan(40)
  const expected = withPlace.flatMap(page =>
    page.standing!.figures.map(({ key }) => [page.document.lot, key, placeOf(page, key)])
  )
  expect(seen).toEqual(expected)
})

test('the figure is the one of the results, and the others’ range holds every other', () => {
  for (const { document, standing } of withPlace)
    for (const { key, value, others } of standing!.figures) {
      const row = document.results.find(one => one.key === key)!
      expect(value).toContain(`${row.value!.printed} ± ${row.expandedUncertainty!.printed}`)
      const [least, greatest] = others
        .replaceAll('\u202f', '')
        .split(' to ')
        .map(text => Number.parseFloat(text))
      for (const other of figuresOf(document.grade!.id, key))
        if (other.lot !== document.lot) {
          expect(other.value).toBeGreaterThanOrEqual(least!)
          expect(other.value).toBeLessThanOrEqual(greatest!)
        }
    }
})

describe('no place', () => {
  test('among fewer than three others, nor of a figure without a limit', () => {
    for (const { document, standing } of withPlace)
      for (const { key } of standing!.figures) {
        expect(figuresOf(document.grade!.id, key).length).toBeGreaterThan(3)
        expect(document.results.find(one => one.key === key)!.limit).toBeDefined()
      }
    expect(publicSite.lots.some(({ standing }) => !standing)).toBe(true)
  })

  test('where nothing is known of the grade', () => {
    expect(standingOf({ lot: 'X', rows: [], rule: 'simple' }, [])).toBeUndefined()
  })

  test('in data or papers of a lot', () => {
    const page = withPlace[0]!
    expect(JSON.stringify(lotDataOf(page, publicSite))).not.toContain('not told apart')
    expect(page.attachment).not.toContain('not told apart')
    expect(JSON.stringify(page.certificates)).not.toContain('not told apart')
  })
})

test('customers are told of public lots alone; the workshop of all that were tested', () => {
  const lot = withPlace.find(({ document }) => document.lot.startsWith('EB'))!.document.lot
  const lotsIn = (site: typeof publicSite) =>
    Number(/(\d+) other lots/u.exec(pageOf(site, lot).standing!.sentence)![1])
  expect(lotsIn(workshopSite)).toBeGreaterThan(lotsIn(publicSite))
})
