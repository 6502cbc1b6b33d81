import fc from 'fast-check'
import { expect, test } from 'vitest'
import { moisture } from '../../src/chemistry/drying.ts'
import { volatileDry } from '../../src/chemistry/volatile.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'
import { dish, impossibleWeighings } from './weighings.ts'

test.for([
  ['by hand: 12.40 % lost by a dry sample', 20, 25, 24.38, 0, '12.4000'],
  ['by hand: 13.00 % lost, 0.53 % of it moisture: 12.47 of 99.47', 20, 25, 24.35, 0.53, '12.5364'],
  ['by hand: loss equal to the moisture', 20, 25, 24.975, 0.5, '0.0000'],
  ['by hand: 0.40 % lost, moisture 0.50 %: −0.10 of 99.50', 20, 25, 24.98, 0.5, '-0.1005']
] as const)('%s', ([, dish_g, before_g, after_g, moisture_percent, printed]) => {
  const { value } = volatileDry(exactly({ dish_g, before_g, after_g, moisture_percent }))
  expect(asPrinted(value, printed)).toBe(printed)
})

const weighed = { ...dish, moisture_percent: 0.5 }

test.for([
  ...impossibleWeighings,
  [{ moisture_percent: -0.1 }, 'moisture_percent must be at least 0 and below 100, got -0.1'],
  [{ moisture_percent: 100 }, 'moisture_percent must be at least 0 and below 100, got 100']
] as const)('outside the domain: %o', ([wrong, message]) => {
  expect(() => volatileDry(exactly({ ...weighed, ...wrong }))).toThrow(message)
})

const percent = fc.integer({ min: 0, max: 300 }).map(tenths => tenths / 10)

test('the same as drying first and heating the dry sample', () => {
  fc.assert(
    fc.property(percent, percent, (wet, volatile) => {
      const dry_g = 10 * (1 - wet / 100)
      const after_g = 20 + dry_g * (1 - volatile / 100)
      const inputs = exactly({ dish_g: 20, before_g: 30, after_g, moisture_percent: wet })
      const driedFirst = exactly({ dish_g: 20, before_g: 20 + dry_g, after_g })
      expect(volatileDry(inputs).value).toBeCloseTo(volatile, 8)
      expect(volatileDry(inputs).value).toBeCloseTo(moisture(driedFirst).value, 8)
    })
  )
})

test('more moisture within the same loss leaves less that is volatile', () => {
  fc.assert(
    fc.property(percent, percent, (a, b) => {
      const at = (moisture_percent: number) =>
        volatileDry(exactly({ dish_g: 20, before_g: 30, after_g: 26, moisture_percent })).value
      expect(Math.sign(at(a) - at(b))).toBe(Math.sign(b - a))
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(
    volatileDry,
    uncertain({
      dish_g: [20, 0.0003],
      before_g: [21, 0.0001],
      after_g: [20.87, 0.0001],
      moisture_percent: [0.53, 0.014]
    })
  )
})
