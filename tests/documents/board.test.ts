/** The state of the demo workshop, against its records counted another way. */

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Decimal } from 'decimal.js'
import { describe, expect, test } from 'vitest'
import { massText } from '../../src/documents/substances.ts'
import { demoFiles } from '../records-on-disk.ts'
import { root } from '../root.ts'
import { publicSite, siteOf, workshopSite } from './demo.ts'

const partOf = (id: string, site = workshopSite) => {
  const part = site.boards[0]!.parts.find(part => part.id === id)
  if (!part) throw new Error(`the board has no part ${id}`)
  return part
}

const names = (id: string, site = workshopSite) => partOf(id, site).rows.map(({ name }) => name)

/** The demo with one text in one file changed. */
const changed = (path: string, from: string | RegExp, to: string, asOf?: string) => {
  const files = demoFiles.map(file => {
    if (!file.path.endsWith(path)) return file
    const text = file.text.replace(from, to)
    expect(text).not.toBe(file.text)
    return { ...file, text }
  })
  return siteOf(files, { edition: 'workshop', ...(asOf ? { asOf } : {}) })
}

describe('the board', () => {
  test('is the workshop’s alone', () => {
    expect(publicSite.boards).toEqual([])
    expect(workshopSite.boards).toHaveLength(1)
  })

  test('names every lot in quarantine, and no other', () => {
    const waiting = workshopSite.summaries.filter(({ state }) => state === 'quarantine')
    expect(waiting.length).toBeGreaterThan(0)
    expect(names('quarantine').sort()).toEqual(waiting.map(({ lot }) => lot).sort())
  })

  test('tells of limits nothing was measured for, of lots that are not done with', () => {
    const missing = [...workshopSite.lots]
      .filter(({ document }) =>
        ['quarantine', 'released', 'concession'].includes(document.status.state)
      )
      .filter(({ document }) =>
        document.results.some(({ basis, limit }) => basis === 'not measured' && limit)
      )
      .map(({ document }) => document.lot)
    expect(names('tests').sort()).toEqual(missing.sort())
  })

  test('tells of figures within the uncertainty of a limit', () => {
    const near = [...workshopSite.lots].flatMap(({ document }) =>
      ['quarantine', 'released', 'concession'].includes(document.status.state)
        ? document.results
            .filter(({ verdict }) => verdict?.word.startsWith('conditional'))
            .map(() => document.lot)
        : []
    )
    expect(near.length).toBeGreaterThan(0)
    expect(names('guard-band').sort()).toEqual(near.sort())
  })

  test('tells calibrations that are overdue from those due soon', () => {
    const site = siteOf(demoFiles, { edition: 'workshop', asOf: '2027-01-13' })
    const gauge = partOf('instruments', site).rows.find(({ name }) => name === 'MIC-1')!
    expect(gauge).toMatchObject({
      urgent: true,
      cells: [expect.anything(), '2027-01-12', 'overdue']
    })
    expect(
      names('instruments', siteOf(demoFiles, { edition: 'workshop', asOf: '2026-10-30' }))
    ).not.toContain('MIC-1')
    const soon = siteOf(demoFiles, { edition: 'workshop', asOf: '2027-01-12' })
    const due = partOf('instruments', soon).rows.find(({ name }) => name === 'MIC-1')!
    expect(due).not.toHaveProperty('urgent')
    expect(due.cells[2]).toBe('due soon')
  })

  test('gives what is left of each lot, by its trace', () => {
    const rows = partOf('stock').rows
    expect(rows.length).toBeGreaterThan(10)
    for (const { name, cells } of rows) {
      const page = workshopSite.lots.find(({ document }) => document.lot === name)!
      const told = page.process!.trace.flatMap(table => table.rows).map(row => row.join(' '))
      expect(told.join('\n'), name).toContain(cells[2]!.replace(/ (?:kg|g)$/u, ''))
    }
  })

  test('sums what was bought and sold by calendar year', () => {
    const acid = demoFiles
      .filter(({ path, text }) => /materials\/SA-/u.test(path) && /received: 2026/u.test(text))
      .map(({ text }) => {
        const [, mass, unit] = /^quantity: ([\d.]+) (k?g)$/mu.exec(text)!
        const [, part] = /substance: sulfuric acid, fraction: ([\d.]+) %/u.exec(text)!
        return new Decimal(mass!)
          .times(unit === 'kg' ? 1000 : 1)
          .times(part!)
          .div(100)
      })
    expect(acid.length).toBeGreaterThan(1)
    const row = partOf('bought').rows.find(({ name }) => name === 'sulfuric acid')!
    expect(row.cells[0]).toBe('2026')
    expect(row.cells[1]).toBe(massText(acid.reduce((sum, mass) => sum.plus(mass))))
    const foil = partOf('sold').rows.find(({ name }) => name === 'flexible graphite foil')!
    expect(foil.cells[3]).toMatch(/^(?:below|from 80 % on|reached)$/u)
  })

  test('says when a threshold is near, and when it is reached', () => {
    const standing = (mass: string) => {
      const site = changed('producer.yaml', 'mass: 20 kg', `mass: ${mass}`)
      return partOf('bought', site).rows.find(({ name }) => name === 'sulfuric acid')!
    }
    const { cells } = partOf('bought').rows.find(({ name }) => name === 'sulfuric acid')!
    const bought = cells[1]!
    const reached = standing(bought)
    expect(reached).toMatchObject({ urgent: true })
    expect(reached.cells[3]).toBe('reached')
    const [figure, unit] = bought.split(' ')
    expect(standing(`${Number(figure) * 1.2} ${unit}`).cells[3]).toBe('from 80 % on')
    const below = standing(`${Number(figure) * 1.3} ${unit}`)
    expect(below.cells[3]).toBe('below')
    expect(below).not.toHaveProperty('urgent')
  })

  test('never names a threshold in public', () => {
    const because = /because: '([^']+)'/u.exec(
      readFileSync(join(root, 'content', 'producer.yaml'), 'utf8')
    )![1]!
    const { lots, ...site } = publicSite
    expect(JSON.stringify(site) + JSON.stringify([...lots])).not.toContain(because)
    expect(JSON.stringify(workshopSite.boards)).toContain(because)
  })
})

test.each([
  ['0.5', '0.5 g'],
  ['999.99', '999.99 g'],
  ['1000', '1 kg'],
  ['-1500', '-1.5 kg'],
  ['0', '0 g']
])('%s g is %s', (mass, shown) => {
  expect(massText(new Decimal(mass))).toBe(shown)
})
