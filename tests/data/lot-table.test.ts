/** lots.csv, read back by another library and compared with data.json. */

import papaparse from 'papaparse'
import { describe, expect, test } from 'vitest'
import { lotLines, lotTableHead } from '../../src/data/lot-table.ts'
import { lotDataOf } from '../../src/documents/lot-data.ts'
import type { SiteDocument } from '../../src/documents/types.ts'
import { publicSite, workshopSite } from '../documents/demo.ts'
import { issuedSite } from './issued-site.ts'
import { lotPage, siteDocument } from '../fixtures/documents.ts'

const textOf = (site: SiteDocument) => lotTableHead() + site.lots.map(lotLines(site)).join('')

function read(text: string) {
  const { data, errors, meta } = papaparse.parse(text, { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  expect(meta.linebreak).toBe('\r\n')
  return data
}

const number = (text: string | undefined) => (text ? Number(text) : null)

describe.each([publicSite, workshopSite])('the table of an edition', site => {
  test('has the figures of data.json', () => {
    const rows = read(textOf(site))
    let at = 0
    for (const page of site.lots) {
      const data = lotDataOf(page, site)
      const figures = Object.entries({ ...data.process, ...data.quantities })
      for (const [key, figure] of figures) {
        const row = rows[at++]!
        expect(row).toMatchObject({
          lot: data.lot,
          grade: data.grade?.id ?? '',
          made: data.made,
          state: data.status.state,
          quantity: key,
          title: figure.title,
          unit: figure.unit,
          verdict: figure.verdict ?? '',
          method: figure.method?.id ?? ''
        })
        expect(number(row['value'])).toBe(figure.value)
        expect(number(row['below'])).toBe(figure.below)
        expect(number(row['U'])).toBe(figure.expandedUncertainty)
        expect(number(row['k'])).toBe(figure.coverageFactor)
        expect(number(row['n'])).toBe(figure.n)
        expect(number(row['limit min'])).toBe(figure.limit?.min ?? null)
        expect(number(row['limit max'])).toBe(figure.limit?.max ?? null)
        expect(number(row['decided by value'])).toBe(figure.decidedBy?.value ?? null)
      }
      if (figures.length === 0) expect(rows[at++]).toMatchObject({ lot: data.lot, quantity: '' })
    }
    expect(at).toBe(rows.length)
    expect(at).toBeGreaterThan(100)
  })
})

test('names the certificates that stand, and no other', () => {
  const rows = read(textOf(issuedSite))
  expect(issuedSite.certificates.length).toBeGreaterThan(15)
  for (const { number: name, lot, revisions } of issuedSite.certificates)
    for (const { revision, state } of revisions) {
      const cells = rows.filter(row => row['lot'] === lot).map(row => row['certificate'])
      expect(cells.every(cell => cell!.includes(`${name} r${revision}`))).toBe(
        state === 'current' || cells.length === 0
      )
    }
})

test('begins with a byte order mark, once', () => {
  const text = textOf(publicSite)
  expect(text.startsWith('\ufefflot,kind,')).toBe(true)
  expect(text.lastIndexOf('\ufeff')).toBe(0)
})

test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1'])('%j is no formula', kind => {
  const page = { ...lotPage, document: { ...lotPage.document, kind: `${kind},"x"\r\ny` } }
  const [row] = read(lotTableHead() + lotLines(siteDocument)(page))
  expect(row!['kind']).toBe(`'${kind},"x"\r\ny`)
})

test('a negative figure stays a number', () => {
  const [first] = lotPage.document.results
  const results = [{ ...first!, value: { exact: '-0.5', printed: '−0.5' } }]
  const page = { ...lotPage, document: { ...lotPage.document, results } }
  expect(read(lotTableHead() + lotLines(siteDocument)(page)).map(row => row['value'])).toContain(
    '-0.5'
  )
})
