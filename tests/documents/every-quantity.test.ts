/** Every quantity the project knows, from the demo's records to page, paper, data and working. */

import { describe, expect, test } from 'vitest'
import { lotDataOf } from '../../src/documents/lot-data.ts'
import { panelDataOf } from '../../src/documents/panel-data.ts'
import { workingText } from '../../src/documents/working-text.ts'
import type { LotPage } from '../../src/documents/types.ts'
import { quantities, quantityNames } from '../../src/quantities.ts'
import { publicSite, workshopSite } from './demo.ts'

const panels = [...workshopSite.panelPages]

/** Pages of both kinds as the same few parts. */
const parts = [
  ...workshopSite.lots.flatMap(({ document, process }: LotPage) => [
    { name: document.lot, isPrivate: false, ...document },
    ...(process ? [{ name: document.lot, isPrivate: true, ...process }] : [])
  ]),
  ...panels.map(panel => ({ name: panel.number, isPrivate: true, ...panel }))
]

const data = [
  ...workshopSite.lots.map(page => lotDataOf(page, workshopSite)),
  ...panels.map(panelDataOf)
].flatMap(one => [one.quantities, 'process' in one ? (one.process ?? {}) : {}])

const measured = parts.flatMap(part =>
  part.results
    .filter(({ basis }) => basis === 'measured')
    .map(row => ({ part, row, working: part.workings.find(({ key }) => key === row.key) }))
)

describe.each(quantityNames.map(name => [quantities[name].key, quantities[name]] as const))(
  '%s',
  (key, { side, unit }) => {
    const own = measured.filter(({ row }) => row.key === key)

    test('stands on a page, on its side, with its unit', () => {
      expect(own.length).toBeGreaterThan(0)
      for (const { part, row } of own) {
        expect([part.name, part.isPrivate]).toEqual([part.name, side === 'process'])
        expect(row.value ?? row.report).toBeDefined()
        if (unit !== '1') expect(row.unit.printed).not.toBe('')
      }
    })

    test('stands in the data of every lot that has it', () => {
      const given = data.filter(one => one[key]?.basis === 'measured')
      expect(given).toHaveLength(own.length)
    })

    test('is explained with formula, source, inputs and budget, or by its report', () => {
      for (const { part, row, working } of own) {
        if (row.report) continue
        expect([part.name, working?.key]).toEqual([part.name, key])
        const { formula, source, inputs, readings, budget, statements } = working!
        expect(formula).not.toBe('')
        expect(source).not.toBe('')
        expect(statements.length).toBeGreaterThan(0)
        expect(inputs.rows.length + (readings?.rows.length ?? 0)).toBeGreaterThan(0)
        expect(budget.rows.length).toBeGreaterThan(0)
        const told = workingText(part.name, { working: working!, row, isPrivate: part.isPrivate })
        expect(told).toContain(`Formula  ${formula}`)
        expect(told).toContain(`Source   ${source}`)
      }
    })
  }
)

test('what customers see of a lot stands on its certificate, each figure of it', () => {
  const papers = publicSite.lots.flatMap(({ document, certificates }) =>
    certificates.map(({ document: paper }) => ({ document, paper }))
  )
  expect(papers.length).toBeGreaterThan(20)
  const seen = new Set<string>()
  for (const { document, paper } of papers) {
    // Types of EN 10204 that state no results have none; superseded papers keep what they said.
    if (paper.results.length === 0 || document.results.length === 0) continue
    for (const { key } of paper.results) seen.add(key)
    const isLatest = papers.findLast(one => one.document === document)!.paper === paper
    if (isLatest && !paper.title.includes('2.2'))
      expect([document.lot, paper.results.map(({ key }) => key)]).toEqual([
        document.lot,
        document.results.map(({ key }) => key)
      ])
  }
  expect(seen.size).toBeGreaterThan(25)
})
