import { describe, expect, test } from 'vitest'
import { oxidationLoss } from '../../src/chemistry/oxidation-loss.ts'
import { measured } from '../../src/metrology/estimate.ts'
import { asPrinted } from '../metrology/as-printed.ts'
import { exactly, uncertain } from '../metrology/given.ts'
import { expectLinear } from '../metrology/monte-carlo.ts'

test.for([
  ['API Std 622, 6.1.1, definition, by hand', 2, 1.734, '13.3'],
  ['by hand: an eighth is lost', 4, 3.5, '12.5'],
  ['nothing is lost', 1, 1, '0'],
  ['all of it is lost', 1, 0, '100']
] as const)('%s', ([, dry_g, end_g, printed]) => {
  expect(asPrinted(oxidationLoss(exactly({ dry_g, end_g })).value, printed)).toBe(printed)
})

test('a piece may gain what the balance explains', () => {
  const inputs = { dry_g: measured(1, 0.0001, 'a'), end_g: measured(1.0002, 0.0001, 'b') }
  expect(oxidationLoss(inputs).value).toBeCloseTo(-0.02, 9)
})

describe('refuses', () => {
  test.for([
    [{ dry_g: 0, end_g: 0 }, 'dry_g must be greater than 0, got 0'],
    [{ dry_g: 1, end_g: -1 }, 'end_g must be at least 0, got -1'],
    [{ dry_g: 1, end_g: 1.1 }, 'end_g must be at most dry (1 g), got 1.1']
  ] as const)('%o', ([inputs, message]) => {
    expect(() => oxidationLoss(exactly(inputs))).toThrow(message)
  })
})

test('trials of the distributions agree', () => {
  expectLinear(oxidationLoss, uncertain({ dry_g: [2, 0.0011], end_g: [1.734, 0.0022] }))
})
