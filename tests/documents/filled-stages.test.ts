/** The workshop's table of filled stages: a batch beside what it could hold at most. */

import { describe, expect, test } from 'vitest'
import { filledStagesTable } from '../../src/documents/filled-stages.ts'
import { pageOf, publicSite, workshopSite } from './demo.ts'

const tableOf = (lot: string) => pageOf(workshopSite, lot).process?.filledStages

describe('a batch with an uptake', () => {
  const [batch, ...stages] = tableOf('EB-26-001')!.rows

  // Computed by hand from the composition, as in tests/chemistry/intercalation.test.ts.
  test('stands beside filled stages', () => {
    expect(stages).toEqual([
      ['Stage 1', '102 to 119', '50.4 to 54.3', '16.5 to 17.8'],
      ['Stage 2', '50.9 to 59.4', '33.7 to 37.3', '11.1 to 12.2'],
      ['Stage 3', '33.9 to 39.6', '25.3 to 28.4', '8.31 to 9.30'],
      ['Stage 4', '25.4 to 29.7', '20.3 to 22.9', '6.65 to 7.50']
    ])
  })

  test('shows its own uptake and guest as its results do, and the sulfur that would be', () => {
    const { results } = pageOf(workshopSite, 'EB-26-001').process!
    const printed = (key: string) => results.find(row => row.key === key)!.value!
    const [title, uptake, guest, sulfur] = batch!
    expect([title, uptake, guest]).toEqual([
      'This batch',
      printed('uptake').printed,
      printed('loss-ceiling').printed
    ])
    // 3 mol S to HSO4 and 2 H2SO4: 96.18 of 293.208 g.
    expect(Number(sulfur)).toBeCloseTo((Number(printed('loss-ceiling').exact) * 96.18) / 293.208, 1)
  })
})

test('a lot without an uptake has none, and no customer sees one', () => {
  expect(filledStagesTable({})).toBeUndefined()
  const made = workshopSite.lots.filter(({ process }) => process?.filledStages)
  expect(made.length).toBeGreaterThan(5)
  for (const { process } of made) expect(process!.results.map(({ key }) => key)).toContain('uptake')
  expect(JSON.stringify(publicSite)).not.toContain('filled stages')
})
