/** GUM annex H.1: an end gauge compared with a standard of the same nominal length. */

import { describe, expect, test } from 'vitest'
import { expand } from '../../src/metrology/coverage.ts'
import {
  type Estimate,
  budgetOf,
  degreesOfFreedom,
  estimate,
  measured,
  propagate,
  rectangular,
  uncertaintyOf
} from '../../src/metrology/estimate.ts'
import { asPrinted } from './as-printed.ts'

const one = (name: string, u: number, df: number) =>
  ({ cause: { name, pool: name, kind: 'B', df }, u }) as const

/**
 * Difference of the two gauges, nm: repeated observations (13/√5) and two effects of the comparator
 * (10/t and 20/3). The GUM goes on with 5.8, 3.9 and 6.7 as it prints them, and so does this.
 */
const difference_nm = estimate(215, [
  one('observations', 5.8, 24),
  one('comparator, random', 3.9, 5),
  one('comparator, systematic', 6.7, 8)
])

const inputs: Record<string, Estimate> = {
  standard_nm: measured(50_000_623, 75 / 3, 'certificate', 18),
  difference_nm,
  expansionDifference: measured(0, rectangular(1e-6), 'expansion difference', 50),
  temperatureDifference: measured(0, rectangular(0.05), 'temperature difference', 2),
  expansion: measured(11.5e-6, rectangular(2e-6), 'expansion'),
  temperature: measured(-0.1, Math.hypot(0.2, 0.5 / Math.sqrt(2)), 'temperature')
}

/** Length of the end gauge, nm (GUM H.1.2, first-order form). */
const length_nm = propagate(
  x =>
    x.standard_nm! +
    x.difference_nm! -
    x.standard_nm! *
      (x.expansionDifference! * x.temperature! + x.expansion! * x.temperatureDifference!),
  inputs
)

describe('JCGM 100:2008, annex H.1', () => {
  test('H.1.5: the length is 50 000 838 nm', () => {
    expect(asPrinted(length_nm.value, '50000838')).toBe('50000838')
  })

  test('H.1.4: u of the difference is 9.7 nm and of the length 31.664 nm (prints 32)', () => {
    expect(asPrinted(uncertaintyOf(difference_nm), '9.68')).toBe('9.68')
    expect(asPrinted(uncertaintyOf(length_nm), '31.664')).toBe('31.664')
  })

  test.for([
    ['certificate', '25'],
    ['observations', '5.8'],
    ['comparator, random', '3.9'],
    ['comparator, systematic', '6.7'],
    ['expansion difference', '2.9'],
    ['temperature difference', '16.6']
  ] as const)('table H.1: %s contributes %s nm', ([pool, printed]) => {
    const line = budgetOf(length_nm).find(entry => entry.pool === pool)
    expect(asPrinted(line!.u, printed)).toBe(printed)
  })

  test('expansion and temperature contribute nothing at first order', () => {
    const pools = budgetOf(length_nm)
      .filter(line => line.u > 1e-6)
      .map(line => line.pool)
    expect(pools).not.toContain('expansion')
    expect(pools).not.toContain('temperature')
  })

  test('H.1.6: 25.4 degrees of freedom for the difference; 16.75 for the length, used as 16', () => {
    // The GUM puts its rounded 9.7 nm into the formula, which makes 25.4 print as 25.6.
    expect(asPrinted(degreesOfFreedom(difference_nm), '25.4')).toBe('25.4')
    expect(asPrinted(degreesOfFreedom(length_nm), '16.75')).toBe('16.75')
    expect(expand(length_nm).df).toBe(16)
  })

  test('H.1.6: t for 99 % and 16 degrees of freedom is 2.921, U 92.5 nm (prints 2.92, 93)', () => {
    const { k, U } = expand(length_nm, 0.99)
    expect(asPrinted(k, '2.92078')).toBe('2.92078')
    expect(asPrinted(U, '92.48')).toBe('92.48')
  })

  test('the same at 95 %, computed: U 67.12 nm', () => {
    expect(asPrinted(expand(length_nm).U, '67.12')).toBe('67.12')
  })
})
