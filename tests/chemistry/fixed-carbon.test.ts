import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { devolatilisedCarbon, fixedCarbon } from '../../src/chemistry/fixed-carbon.ts'
import { measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

const of = (ash_percent: number, volatile_percent: number) =>
  exactly({ ash_percent, volatile_percent })

test.for([
  ['by hand from the definitions: ash 0.72 %, volatile 12.4 %', 0.72, 12.4, '86.88', '99.18'],
  ['by hand from the definitions: no volatile matter', 0.72, 0, '99.28', '99.28'],
  ['by hand from the definitions: no ash', 0, 12.4, '87.60', '100.00'],
  ['by hand from the definitions: volatile −0.10 %', 0.72, -0.1, '99.38', '99.281']
] as const)('%s', ([, ash, volatile, fixed, devolatilised]) => {
  expect(asPrinted(fixedCarbon(of(ash, volatile)).value, fixed)).toBe(fixed)
  expect(asPrinted(devolatilisedCarbon(of(ash, volatile)).value, devolatilised)).toBe(devolatilised)
})

test.for([
  [-0.1, 12, 'ash_percent must be at least 0 and below 100, got -0.1'],
  [0, 100, 'volatile_percent must be below 100 and, with the ash of 0 %, at most 100, got 100'],
  [40, 61, 'volatile_percent must be below 100 and, with the ash of 40 %, at most 100, got 61']
] as const)('outside the domain: ash %f %, volatile %f %', ([ash, volatile, message]) => {
  expect(() => fixedCarbon(of(ash, volatile))).toThrow(message)
  expect(() => devolatilisedCarbon(of(ash, volatile))).toThrow(message)
})

test('an ash below 0 by no more than its noise is taken as it is', () => {
  const inputs = uncertain({ ash_percent: [-0.01, 0.01], volatile_percent: [12, 0.1] })
  expect(fixedCarbon(inputs).value).toBeCloseTo(88.01, 9)
})

test('causes that ash and volatile matter share add up before they are squared', () => {
  const shared = (value: number, u: number) => measured(value, u, 'moisture of the sample')
  const result = fixedCarbon({ ash_percent: shared(1, 0.01), volatile_percent: shared(12, -0.03) })
  expect(uncertaintyOf(result)).toBeCloseTo(0.02, 10)
})

const percent = fc.integer({ min: 0, max: 490 }).map(tenths => tenths / 10)

test('the devolatilised basis is the fixed carbon over what is left', () => {
  fc.assert(
    fc.property(percent, percent, (ash, volatile) => {
      const fixed = fixedCarbon(of(ash, volatile)).value
      const carbon = devolatilisedCarbon(of(ash, volatile)).value
      expect(carbon).toBeCloseTo((100 * fixed) / (100 - volatile), 9)
      expect(carbon).toBeGreaterThanOrEqual(fixed - 1e-9)
      expect(fixed + ash + volatile).toBeCloseTo(100, 10)
    })
  )
})

describe('trials of the distributions agree', () => {
  const inputs = uncertain({ ash_percent: [5, 0.15], volatile_percent: [12.4, 0.12] })
  test('fixedCarbon', () => expectLinear(fixedCarbon, inputs))
  test('devolatilisedCarbon', () => expectLinear(devolatilisedCarbon, inputs))
})
