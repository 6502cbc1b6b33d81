/** What a blend is expected to come to, against the sums by mass done here. */

import { expect, test } from 'vitest'
import { pageOf, workshopSite } from './demo.ts'

/** EB-26-009 of the demo: 60.02 g of EB-26-003 and 90.04 g of EB-26-005. */
const parts = [
  [60.02, 'EB-26-003'],
  [90.04, 'EB-26-005']
] as const

// A mass balance: each part brings what it has by its mass.
test.for([
  ['expansion-volume', 'Expansion volume', '266.2 mL/g'],
  ['free-acid', 'Free acidity as H₂SO₄', '0.0585 %'],
  ['moisture', 'Moisture', '0.482 %'],
  ['volatile', 'Volatile matter, dry basis', '15.81 %'],
  ['ash', 'Ash, dry basis', '0.633 %']
] as const)('%s: Σ m x / Σ m', ([key, title, printed]) => {
  const values = parts.map(([, lot]) => {
    const row = pageOf(workshopSite, lot).document.results.find(result => result.key === key)
    return Number(row!.value!.exact)
  })
  const total = parts.reduce((sum, [mass]) => sum + mass, 0)
  const mean = parts.reduce((sum, [mass], index) => sum + mass * values[index]!, 0) / total
  const { rows } = pageOf(workshopSite, 'EB-26-009').process!.expected!
  const [, told] = rows.find(([name]) => name === title)!
  expect(told!.replace(/\s/u, ' ')).toBe(printed)
  const places = printed.split(' ')[0]!.split('.')[1]!.length
  expect(Math.abs(Number.parseFloat(told!) - mean)).toBeLessThanOrEqual(0.5 * 0.1 ** places * 1.001)
})
