/** Panels on a lot's page: opened by its grade, and nothing of the paint with them. */

import { expect, test } from 'vitest'
import { demoFiles, withChange } from '../records-on-disk.ts'
import { pageOf, publicSite, siteOf, workshopSite } from './demo.ts'

const openOf = (lot: string, site = publicSite) => pageOf(site, lot).document.screening

test('a grade that opens them shows means of own coatings, with what no such figure is', () => {
  const { warning, about, table, links } = openOf('EB-26-015')!
  expect(warning).toMatch(/^Bench screening, not a fire rating\..*accredited/u)
  expect(about[0]).toBe(
    'Steel panels painted with this flake and heated from 28 October 2026 to 30 October 2026, until their backs were at 500 °C.'
  )
  expect(about[1]).toMatch(/^Method TM-40, edition 1: Coated panel over a burner; /u)
  expect(links).toEqual([])
  expect(table.columns.map(({ title }) => title)).toEqual([
    'Panels',
    'Active mass per area, g/m²',
    'Ceiling of the char height, mm',
    'Efficiency of expansion, %',
    'Time gained over a bare panel, min',
    'Time gained per active mass, s·m²/g'
  ])
  const [means, scatter, ...others] = table.rows
  expect([means![0], scatter![0], others]).toEqual(['3 panels', 's between them', []])
  for (const cell of means!.slice(1)) expect(cell).toMatch(/^\d+\.?\d* ± \d+\.?\d*$/u)
  for (const cell of scatter!.slice(1)) expect(cell).toMatch(/^\d+\.?\d*$/u)
})

test('nothing tells of paint, film, codes or panels, nor of coatings bought in', () => {
  const text = JSON.stringify(openOf('EB-26-015'))
  expect(text).not.toMatch(/loading|solids|film mass|PN-26|\bS1\b|\bT7\b|paint-|blue cone/iu)
})

test('a grade that does not open them shows none; the workshop sees them all, and the way there', () => {
  expect(openOf('EB-26-012')).toBeUndefined()
  expect(openOf('EB-26-012', workshopSite)!.links.map(({ lot }) => lot)).toEqual([
    'PN-26-06',
    'PN-26-07',
    'PN-26-08'
  ])
  expect(openOf('EB-26-001', workshopSite)).toBeUndefined()
})

test('none is told of before the day it was heated, nor in the data of a certificate', () => {
  const early = siteOf(demoFiles, { edition: 'public', asOf: '2026-10-28' })
  expect(openOf('EB-26-015', early)!.table.rows[0]![0]).toBe('2 panels')
  const before = siteOf(demoFiles, { edition: 'public', asOf: '2026-10-27' })
  expect(openOf('EB-26-015', before)).toBeUndefined()
  expect(pageOf(publicSite, 'EB-26-015').attachment).not.toContain('screening')
})

test('panels that stand against no bare one have no time gained, in words', () => {
  const bare = 'bare: [PN-26-01, PN-26-02]\n'
  const files = ['PN-26-03', 'PN-26-04', 'PN-26-05'].reduce(
    (all, number) => withChange(all, `panels/${number}.yaml`, bare, ''),
    demoFiles
  )
  const [row] = openOf('EB-26-015', siteOf(files, { edition: 'public' }))!.table.rows
  expect(row!.slice(-2)).toEqual(['none', 'none'])
})
