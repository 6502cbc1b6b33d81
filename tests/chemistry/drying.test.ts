import fc from 'fast-check'
import { expect, test } from 'vitest'
import { moisture } from '../../src/chemistry/drying.ts'
import { estimate, measured, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'
import { dish, impossibleWeighings } from './weighings.ts'

test.for([
  ['loss on drying, by hand', 30.2051, 31.2051, 31.1998, '0.53'],
  ['loss on drying, by hand: 5.0000 g to 4.9645 g', 20, 25, 24.9645, '0.710'],
  ['loss on drying, by hand: nothing lost', 20, 25, 25, '0.00']
] as const)('%s: %f g, %f g, %f g', ([, dish_g, before_g, after_g, printed]) => {
  const { value } = moisture(exactly({ dish_g, before_g, after_g }))
  expect(asPrinted(value, printed)).toBe(printed)
})

test.for(impossibleWeighings)('outside the domain: %o', ([wrong, message]) => {
  expect(() => moisture(exactly({ ...dish, ...wrong }))).toThrow(message)
})

test('a zero error common to the three weighings cancels', () => {
  const cause = { name: 'BAL-1 zero', pool: 'BAL-1', kind: 'B', df: Infinity } as const
  const off = (value: number) => estimate(value, [{ cause, u: 0.01 }])
  const result = moisture({ dish_g: off(30.2051), before_g: off(31.2051), after_g: off(31.1998) })
  // 1 % of the mass each, left of it what the difference quotients do not see
  expect(uncertaintyOf(result)).toBeLessThan(1e-6)
})

test('the three weighings count for a small loss as (−1, 1) and the loss itself', () => {
  const one = (name: string, value: number) => measured(value, 0.0001, name)
  const result = moisture({
    dish_g: one('dish', 30.2051),
    before_g: one('before', 31.2051),
    after_g: one('after', 31.1998)
  })
  // ∂w/∂before = (after − dish)/(before − dish)², ∂w/∂after = −1/m, ∂w/∂dish = (before − after)/m²
  expect(result.terms.get('before')!.u).toBeCloseTo(0.0001 * 99.47, 8)
  expect(result.terms.get('after')!.u).toBeCloseTo(-0.0001 * 100, 8)
  expect(result.terms.get('dish')!.u).toBeCloseTo(0.0001 * 0.53, 8)
})

const mass = fc.integer({ min: 1000, max: 100_000 }).map(milligrams => milligrams / 1000)
const part = fc.integer({ min: 0, max: 1000 }).map(perMille => perMille / 1000)

test('the dish does not matter, nor the scale', () => {
  fc.assert(
    fc.property(mass, mass, part, (sample_g, dish_g, lost) => {
      const weighed = (dish: number, k: number) =>
        moisture(
          exactly({
            dish_g: dish,
            before_g: dish + k * sample_g,
            after_g: dish + k * sample_g * (1 - lost * 0.999)
          })
        ).value
      expect(weighed(dish_g, 1)).toBeCloseTo(99.9 * lost, 7)
      expect(weighed(2 * dish_g, 1)).toBeCloseTo(weighed(dish_g, 3), 7)
    })
  )
})

test('trials of the distributions agree', () => {
  expectLinear(
    moisture,
    uncertain({
      dish_g: [30.2051, 0.0001],
      before_g: [31.2051, 0.0001],
      after_g: [31.1998, 0.0001]
    })
  )
})

test('a dry sample may seem to gain what the balance cannot tell, and no more', () => {
  const weighed = (after: number) => {
    const on = (value: number, name: string) => measured(value, 0.0001, name)
    return moisture({
      dish_g: on(30.2051, 'dish'),
      before_g: on(31.2051, 'before'),
      after_g: on(after, 'after')
    }).value
  }
  expect(weighed(31.2053)).toBeCloseTo(-0.02, 6)
  expect(() => weighed(31.2061)).toThrow('after_g must be at most before')
})
