/** Outlier tests against the handbook. */

import { describe, expect, test } from 'vitest'
import { generalisedExtremes, grubbs, grubbsCritical } from '../../src/quality/outliers.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { isotopes, rosner } from './handbook.ts'

describe('Grubbs', () => {
  // NIST/SEMATECH e-Handbook, 1.3.5.17.1: G = 2.4688. Its critical value 2.032 is that of one side.
  test('the isotopes: 245.57 lies apart', () => {
    const extreme = grubbs(isotopes)!
    expect(extreme).toMatchObject({ index: 7, isOutlier: true })
    expect(asPrinted(extreme.distance, '2.4688')).toBe('2.4688')
    expect(asPrinted(extreme.critical, '2.1266')).toBe('2.1266')
  })

  // Grubbs (1969), table 1, both sides and (5 % column at twice the significance) one side; n = 3 to 30
  // recomputed from the t distribution in another language.
  test.for([
    [3, '1.1531', '1.1543'],
    [5, '1.6714', '1.7150'],
    [8, '2.0317', '2.1266'],
    [10, '2.1761', '2.2900'],
    [15, '2.4090', '2.5483'],
    [20, '2.5566', '2.7082'],
    [30, '2.7451', '2.9085']
  ] as const)('n = %d at 5 %%: one side %s, both %s', ([n, one, two]) => {
    expect(asPrinted(grubbsCritical(n, 0.1), one)).toBe(one)
    expect(asPrinted(grubbsCritical(n), two)).toBe(two)
  })

  test.for([
    [5, '1.7489', '1.7637'],
    [8, '2.2208', '2.2744'],
    [10, '2.4097', '2.4821'],
    [20, '2.8838', '3.0008']
  ] as const)('n = %d at 1 %%: one side %s, both %s', ([n, one, two]) => {
    expect(asPrinted(grubbsCritical(n, 0.02), one)).toBe(one)
    expect(asPrinted(grubbsCritical(n, 0.01), two)).toBe(two)
  })

  test('a low figure lies apart as a high one does', () => {
    const mirrored = grubbs(isotopes.map(value => -value))!
    expect(mirrored).toEqual(grubbs(isotopes))
  })

  test('equal figures: none lies apart; two figures: none can', () => {
    expect(grubbs([4, 4, 4])).toBeUndefined()
    expect(() => grubbs([1, 2])).toThrow(RangeError)
  })
})

describe('NIST/SEMATECH e-Handbook, 1.3.5.17.3: up to ten of Rosner’s 54', () => {
  const steps = generalisedExtremes(rosner, 10)

  test.for(
    [
      ['3.1189', '3.1588'],
      ['2.9430', '3.1514'],
      ['3.1794', '3.1439'],
      ['2.8102', '3.1362'],
      ['2.8156', '3.1282'],
      ['2.8482', '3.1201'],
      ['2.2793', '3.1118'],
      ['2.3104', '3.1032'],
      ['2.1016', '3.0945'],
      ['2.0672', '3.0854']
    ].map((row, index) => [index + 1, ...row] as const)
  )('step %d: R = %s, λ = %s', row => {
    const [step, distance, critical] = row
    expect(asPrinted(steps[step - 1]!.distance, distance!)).toBe(distance)
    expect(asPrinted(steps[step - 1]!.critical, critical!)).toBe(critical)
  })

  test('three outliers, though the first two steps alone would show none', () => {
    const flagged = steps.filter(({ isOutlier }) => isOutlier).map(({ index }) => rosner[index])
    expect(flagged).toEqual([6.01, 5.42, 5.34])
  })

  test('figures stay as they were', () => {
    expect(rosner).toHaveLength(54)
  })

  test('what is left at the last step must be enough', () => {
    expect(() => generalisedExtremes([1, 2, 3, 4], 3)).toThrow(RangeError)
    expect(generalisedExtremes([1, 2, 3, 4], 2)).toHaveLength(2)
  })

  test('where the rest are equal, the search ends', () => {
    expect(generalisedExtremes([5, 5, 5, 5, 9], 3).map(({ index }) => index)).toEqual([4])
  })
})
