import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  acidPerAnion,
  guestFraction_percent,
  stageUptake_percent,
  stageYield_percent,
  sulfurFraction_percent,
  yieldCeilings_percent
} from '../../src/chemistry/intercalation.ts'
import { asPrinted } from '../metrology/as-printed.ts'

/**
 * Computed by hand from the composition (from memory) with C 12.011, HSO4 97.064, H2SO4 98.072 g/mol:
 * stage, x, uptake %, yield %, guest % and sulfur % of the product.
 */
const stages = [
  [1, 2, '101.72', '201.72', '50.43', '16.54'],
  [2, 2, '50.86', '150.86', '33.71', '11.06'],
  [3, 2, '33.91', '133.91', '25.32', '8.31'],
  [4, 2, '25.43', '125.43', '20.27', '6.65'],
  [5, 2, '20.34', '120.34', '16.90', '5.55'],
  [1, 2.5, '118.73', '218.73', '54.28', '17.80'],
  [2, 2.5, '59.36', '159.36', '37.25', '12.21'],
  [3, 2.5, '39.58', '139.58', '28.35', '9.30'],
  [4, 2.5, '29.68', '129.68', '22.89', '7.50'],
  [5, 2.5, '23.75', '123.75', '19.19', '6.29']
] as const

test.for(stages)('stage %i, x = %f', ([stage, x, uptake, mass, guest, sulfur]) => {
  expect(asPrinted(stageUptake_percent(stage, x), uptake)).toBe(uptake)
  expect(asPrinted(stageYield_percent(stage, x), mass)).toBe(mass)
  expect(asPrinted(guestFraction_percent(stage, x), guest)).toBe(guest)
  expect(asPrinted(sulfurFraction_percent(stage, x), sulfur)).toBe(sulfur)
})

test('no batch can yield more than a filled stage 1: 201.72 % for x = 2, 218.73 % for 2.5', () => {
  expect(acidPerAnion).toEqual([2, 2.5])
  expect(yieldCeilings_percent.map(ceiling => asPrinted(ceiling, '0.00'))).toEqual([
    '201.72',
    '218.73'
  ])
})

describe('outside the domain', () => {
  test.for([
    [0, 2, 'stage must be a whole number from 1, got 0'],
    [1.5, 2, 'stage must be a whole number from 1, got 1.5'],
    [Infinity, 2, 'stage must be a whole number from 1, got Infinity'],
    [1, -0.5, 'x must be at least 0, got -0.5'],
    [1, NaN, 'x must be at least 0, got NaN']
  ] as const)('stage %f, x = %f', ([stage, x, message]) => {
    for (const model of [stageUptake_percent, guestFraction_percent, sulfurFraction_percent])
      expect(() => model(stage, x)).toThrow(message)
  })
})

const stage = fc.integer({ min: 1, max: 30 })
const x = fc.double({ min: 0, max: 5, noNaN: true })

test('stage n takes up an nth of stage 1', () => {
  fc.assert(
    fc.property(stage, x, (n, acid) => {
      expect(n * stageUptake_percent(n, acid)).toBeCloseTo(stageUptake_percent(1, acid), 9)
    })
  )
})

test('the guest is the ceiling of the loss on expansion, U / (1 + U)', () => {
  fc.assert(
    fc.property(stage, x, (n, acid) => {
      const uptake = stageUptake_percent(n, acid) / 100
      expect(guestFraction_percent(n, acid)).toBeCloseTo((100 * uptake) / (1 + uptake), 9)
    })
  )
})

test('sulfur times M(H2SO4)/M(S) is just above the guest: the anion lacks one hydrogen', () => {
  fc.assert(
    fc.property(stage, x, (n, acid) => {
      const asAcid = (sulfurFraction_percent(n, acid) * 98.072) / 32.06
      const guest = guestFraction_percent(n, acid)
      expect(asAcid / guest).toBeGreaterThan(1)
      expect(asAcid / guest).toBeLessThan(1.0105)
    })
  )
})
