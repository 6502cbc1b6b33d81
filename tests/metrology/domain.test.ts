import { describe, expect, test } from 'vitest'
import {
  DomainError,
  requireAtMost,
  requireNotNegative,
  requirePercent,
  requirePositive
} from '../../src/metrology/domain.ts'
import { exactly } from './given.ts'

test('an error names the input, the rule, what was found and what to do', () => {
  const error = new DomainError('mass_g', 'greater than 0', -0.123456789, 'weigh it again')
  expect(error).toBeInstanceOf(RangeError)
  expect({ ...error, message: error.message }).toEqual({
    name: 'DomainError',
    input: 'mass_g',
    reason: 'must be greater than 0, got -0.123457 g',
    hint: 'weigh it again',
    message: 'mass_g must be greater than 0, got -0.123457'
  })
})

describe('guards let their domain pass and nothing else', () => {
  test.for([
    ['requirePositive', requirePositive, [1e-9, 1, 1e9], [0, -1, NaN, Infinity]],
    ['requireNotNegative', requireNotNegative, [0, 1, 1e9], [-1e-9, NaN, Infinity]],
    ['requirePercent', requirePercent, [0, 50, 99.999], [-1e-9, 100, NaN, Infinity]]
  ] as const)('%s', ([, guard, inside, outside]) => {
    for (const x of inside) expect(() => guard(exactly({ x }), 'x', 'hint')).not.toThrow()
    for (const x of outside) expect(() => guard(exactly({ x }), 'x', 'hint')).toThrow(DomainError)
  })

  test('requireAtMost', () => {
    const guard = (part: number, whole: number) =>
      requireAtMost(exactly({ part, whole }), 'part', 'whole', 'hint')
    expect(() => guard(2, 2)).not.toThrow()
    expect(() => guard(2.1, 2)).toThrow('part must be at most whole (2), got 2.1')
    expect(() => guard(NaN, 2)).toThrow(DomainError)
  })
})
