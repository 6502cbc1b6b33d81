import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ashDry, ashScatter_percent } from '../../src/chemistry/ash.ts'
import { volatileDry } from '../../src/chemistry/volatile.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'
import { dish, impossibleWeighings } from './weighings.ts'

test.for([
  ['residue by mass, by hand, dried first', 25.124, 26.124, 25.1312, 0, '0.72'],
  [
    'residue by mass, by hand, moisture 0.53 %: 0.72 of 99.47',
    25.124,
    26.124,
    25.1312,
    0.53,
    '0.7238'
  ],
  ['residue by mass, by hand, moisture 10 %: 0.72 of 90', 25.124, 26.124, 25.1312, 10, '0.8000'],
  ['residue by mass, by hand, nothing left', 25.124, 26.124, 25.124, 0, '0.00']
] as const)('%s', ([, dish_g, before_g, after_g, moisture_percent, printed]) => {
  const { value } = ashDry(exactly({ dish_g, before_g, after_g, moisture_percent }))
  expect(asPrinted(value, printed)).toBe(printed)
})

// ASTM C561-91, 10.2: within laboratories 0.0127 at a mean of 0.7286; above it in proportion, by hand.
test.for([
  [0.7286, '0.0127'],
  [0.1, '0.0127'],
  [1.4572, '0.0254'],
  [5, '0.0872']
] as const)('readings of %f %% ash scatter by %s %%', ([ash, printed]) => {
  expect(asPrinted(ashScatter_percent(ash), printed)).toBe(printed)
})

const weighed = { ...dish, moisture_percent: 0.5 }

test.for([
  ...impossibleWeighings,
  [{ moisture_percent: -0.1 }, 'moisture_percent must be at least 0 and below 100, got -0.1'],
  [{ moisture_percent: 100 }, 'moisture_percent must be at least 0 and below 100, got 100']
] as const)('outside the domain: %o', ([wrong, message]) => {
  expect(() => ashDry(exactly({ ...weighed, ...wrong }))).toThrow(message)
})

const percent = fc.integer({ min: 0, max: 500 }).map(tenths => tenths / 10)

test('ash and what burned away make 100 % of the dry mass', () => {
  fc.assert(
    fc.property(percent, percent, (left, wet) => {
      const inputs = exactly({
        dish_g: 20,
        before_g: 30,
        after_g: 20 + left / 10,
        moisture_percent: wet
      })
      expect(ashDry(inputs).value + volatileDry(inputs).value).toBeCloseTo(100, 8)
    })
  )
})

test('twice the residue is twice the ash', () => {
  fc.assert(
    fc.property(percent, percent, (left, wet) => {
      const of = (residue_g: number) =>
        ashDry(exactly({ dish_g: 0, before_g: 10, after_g: residue_g, moisture_percent: wet }))
          .value
      expect(of(left / 10)).toBeCloseTo(2 * of(left / 20), 9)
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(
    ashDry,
    uncertain({
      dish_g: [25.124, 0.0001],
      before_g: [26.124, 0.0003],
      after_g: [25.1312, 0.0001],
      moisture_percent: [10, 0.8]
    })
  )
})
