import { expect, test } from 'vitest'
import { moisture } from '../../src/chemistry/drying.ts'
import { paintSolids } from '../../src/chemistry/paint-solids.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

/** By hand: what is left of the sample over the sample. */
test.for([
  [2, 4, 3.1, '55.0'],
  [1.9824, 4.0867, 3.1414, '55.08'],
  [30, 31, 30.4217, '42.17']
] as const)('by hand: dish %s, before %s, after %s', ([dish_g, before_g, after_g, printed]) => {
  const inputs = exactly({ dish_g, before_g, after_g })
  expect(asPrinted(paintSolids(inputs).value, printed)).toBe(printed)
  expect(paintSolids(inputs).value + moisture(inputs).value).toBeCloseTo(100, 9)
})

test.for([
  [{ dish_g: 2, before_g: 4, after_g: 2 }, 'after_g must be greater than dish (2), got 2'],
  [{ dish_g: 2, before_g: 4, after_g: 4.1 }, 'after_g must be at most before'],
  [{ dish_g: 2, before_g: 2, after_g: 2 }, 'before_g must be greater than dish']
] as const)('refuses %o', ([inputs, message]) => {
  expect(() => paintSolids(exactly(inputs))).toThrow(message)
})

test('trials of the distributions agree', () => {
  expectLinear(
    paintSolids,
    uncertain({ dish_g: [2, 0.0002], before_g: [4, 0.0002], after_g: [3.1, 0.0003] })
  )
})
