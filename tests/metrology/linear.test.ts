/** Whether a first-order budget may be read as it stands. */

import { expect, test } from 'vitest'
import { exact, isNearlyLinear, measured, propagate } from '../../src/metrology/estimate.ts'

const of = (value: number, u: number) => measured(value, u, 'x')

test.for([
  // ½ |f″| u² by hand: y = 1/x bends by u²/x³, y = x² by u², y = 3x + 2 not at all
  ['1/x', ({ x }: { x: number }) => 1 / x, 2, 0.01, 0.01 ** 2 / 8],
  ['x²', ({ x }: { x: number }) => x * x, 3, 0.05, 0.05 ** 2],
  ['3x + 2', ({ x }: { x: number }) => 3 * x + 2, 5, 0.2, 0]
] as const)('the second order of %s is found', ([, model, x, u, expected]) => {
  expect(propagate(model, { x: of(x, u) }).secondOrder).toBeCloseTo(expected, 9)
})

test('a density with a thickness known to 0.5 % is linear to two digits, to 20 % it is not', () => {
  const density = (u: number) => propagate(({ x }) => 1 / x, { x: of(0.5, u) })
  expect(isNearlyLinear(density(0.0025))).toBe(true)
  expect(isNearlyLinear(density(0.1))).toBe(false)
})

test('what is exact is linear', () => {
  expect(isNearlyLinear(propagate(({ x }) => 1 / x, { x: exact(2) }))).toBe(true)
})
