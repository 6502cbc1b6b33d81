/** Coating panels in the workshop edition: compared by what is fair, and never called a rating. */

import { describe, expect, test } from 'vitest'
import { panelDataOf, panelDataSchema, panelDataText } from '../../src/documents/panel-data.ts'
import { demoFiles, smallFiles, withChange } from '../records-on-disk.ts'
import { publicSite, siteOf, workshopSite } from './demo.ts'

const [panels] = workshopSite.panels
const pages = [...workshopSite.panelPages]
const partOf = (id: string) => panels!.parts.find(part => part.id === id)!
const pageOf = (number: string) => pages.find(page => page.number === number)!

test('customers have none, and neither has a workshop without panels', () => {
  expect([publicSite.panels, [...publicSite.panelPages]]).toEqual([[], []])
  const bare = siteOf(smallFiles, { edition: 'workshop' })
  expect([bare.panels, [...bare.panelPages]]).toEqual([[], []])
})

test('none is shown before the day it was made', () => {
  const early = siteOf(demoFiles, { edition: 'workshop', asOf: '2026-10-26' })
  const numbers = [...early.panelPages].map(({ number }) => number)
  expect(numbers).toEqual(['PN-26-01', 'PN-26-02', 'PN-26-03', 'PN-26-04', 'PN-26-05'])
})

test('what no such figure is stands on every page and in the data', () => {
  const warning =
    /^Bench screening, not a fire rating\..*fire test laboratories accredited.*competent people/u
  expect(panels!.warning).toMatch(warning)
  for (const page of pages) {
    expect(page.warning).toMatch(warning)
    expect(panelDataOf(page).warning).toBe(page.warning)
  }
})

test('no text of a panel speaks of a rating or a class in minutes', () => {
  const said = JSON.stringify([panels, pages]).replaceAll('not a fire rating', '')
  expect(said).not.toMatch(/fire rating|fire resistance|\bR ?(?:15|30|60|90|120)\b|\bE?I ?30\b/u)
})

describe('by coating', () => {
  const cellsOf = (code: string) => {
    const { columns, rows } = partOf('coatings')
    const { cells } = rows.find(({ name }) => name === code)!
    return Object.fromEntries(columns.slice(1).map(({ title }, at) => [title, cells[at]]))
  }

  test('the fair figures stand beside each other, with scatter between panels', () => {
    const { columns, rows } = partOf('coatings')
    expect(columns.map(({ title }) => title)).toEqual([
      'Coating',
      'What it is',
      'Flake',
      'Panels',
      'To',
      'Dry film, mm',
      'Active, g/m²',
      'Gained, min',
      'Per film, min/mm',
      'Per film mass, s·m²/g',
      'Per active mass, s·m²/g'
    ])
    expect(rows.map(({ name }) => name)).toEqual(
      ['BARE'].concat(['S1', 'S2', 'T7'].flatMap(code => [code, `${code}, s`]))
    )
    expect(cellsOf('S1')).toMatchObject({
      'What it is': 'own coating',
      Flake: 'EB-26-015',
      Panels: '3',
      To: '500 °C'
    })
    for (const column of ['Gained, min', 'Per film, min/mm', 'Per active mass, s·m²/g']) {
      expect(cellsOf('S1')[column]).toMatch(/^\d+\.\d+ ± \d\.\d+$/u)
      expect(cellsOf('S1, s')[column]).toMatch(/^\d\.\d+$/u)
    }
  })

  test('a single figure has its uncertainty in place of a scatter; unknown flake has none', () => {
    expect(cellsOf('T7')['Gained, min']).toMatch(/^\d+\.\d+ ± \d\.\d+$/u)
    expect(cellsOf('T7, s')['Gained, min']).toBe('')
    expect(cellsOf('T7')['Active, g/m²']).toBe('')
    expect(cellsOf('T7')['Flake']).toBe('')
    expect(cellsOf('BARE')['Gained, min']).toBe('')
  })

  test('few panels of a coating are told of', () => {
    expect(panels!.reading.at(-1)).toBe(
      'Fewer than 3 panels: BARE and T7. Their scatter is hardly known.'
    )
  })
})

describe('panel by panel', () => {
  test('a temperature that was never reached is said where the time would be', () => {
    const { columns, rows } = partOf('fires')
    const at = columns.findIndex(({ title }) => title === 'Time, min') - 1
    expect(rows.find(({ name }) => name === 'PN-26-10')!.cells[at]).toBe('not reached in 14.0 min')
    expect(rows.find(({ name }) => name === 'PN-26-09')!.cells[at]).toMatch(/^\d+\.\d+ ± /u)
    expect(pageOf('PN-26-10').notices).toEqual(['500 °C at the back: not reached in 14.0 min.'])
    expect(pageOf('PN-26-09').notices).toEqual([])
  })

  test('bare plates have a time, and no film', () => {
    expect(partOf('fires').rows.map(({ name }) => name)).toContain('PN-26-01')
    for (const id of ['films', 'chars'])
      expect(partOf(id).rows.map(({ name }) => name)).not.toContain('PN-26-01')
  })

  test('each has its page, with a working for each figure and the way to its flake', () => {
    expect(pages.map(({ number }) => number)).toEqual(panels!.links.map(({ lot }) => lot))
    for (const page of pages) {
      expect(page.workings.map(({ key }) => key)).toEqual(page.results.map(({ key }) => key))
      for (const { statements, formula } of page.workings)
        expect([formula, statements.some(({ maths }) => maths)]).toEqual([formula, true])
    }
    expect(pageOf('PN-26-03').links.slice(1)).toEqual([
      { lot: 'EB-26-015', url: 'lots/EB-26-015/' },
      { lot: 'PN-26-01', url: 'panels/PN-26-01/' },
      { lot: 'PN-26-02', url: 'panels/PN-26-02/' }
    ])
  })

  test('the loading is told as recorded', () => {
    const said = (number: string) =>
      pageOf(number).facts.find(({ label }) => label === 'Loading')?.text
    expect(said('PN-26-03')).toBe('1.00\u00a0g in 10.01\u00a0g of wet paint')
    expect(said('PN-26-09')).toBeUndefined()
    const told = (loading: string) => {
      const files = withChange(
        demoFiles,
        'panels/PN-26-03.yaml',
        'loading: { flake: 1.00 g, paint: 10.01 g }',
        `loading: { ${loading} }`
      )
      const site = siteOf(files, { edition: 'workshop' })
      const page = [...site.panelPages].find(({ number }) => number === 'PN-26-03')!
      return page.facts.find(({ label }) => label === 'Loading')!.text
    }
    expect(told('wet: 9.1 %')).toBe('9.1\u00a0% of the wet paint')
    expect(told('dry: 15 %')).toBe('15\u00a0% of the dry film')
  })

  test('a method that all figures share is told once', () => {
    const { facts, rows, results } = pageOf('PN-26-03')
    expect(facts.filter(({ label }) => label === 'Method')).toHaveLength(1)
    expect(rows.some(({ method }) => method)).toBe(false)
    expect(results.every(({ method }) => method)).toBe(true)
  })
})

describe('charts', () => {
  test('show each log and the standard curve, and say that no burner follows it', () => {
    const [all] = panels!.charts
    expect(all!.summary).toContain('after ISO 834')
    expect(all!.summary).toContain('no burner here follows it')
    const curves = all!.drawing.shapes.filter(({ is }) => is === 'path')
    expect(curves.map(({ of }) => of)).toEqual([
      ...pages.map(({ number }) => number),
      'ISO 834, furnace'
    ])
    const [own] = pageOf('PN-26-03').charts
    expect(own!.drawing.shapes.filter(({ is }) => is === 'path').map(({ of }) => of)).toEqual([
      'PN-26-03',
      'PN-26-01',
      'PN-26-02',
      'ISO 834, furnace'
    ])
  })
})

test('the data keep to their schema and say what they are', () => {
  for (const page of pages) {
    const data: unknown = JSON.parse(panelDataText(page))
    expect(panelDataSchema.parse(data)).toEqual(data)
  }
  const { quantities } = panelDataOf(pageOf('PN-26-03'))
  expect(quantities['gain-per-film']!.unit).toBe('min/mm')
  expect(quantities['gain-per-active-mass']!.unit).toBe('s.m2/g')
})
