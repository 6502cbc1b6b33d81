/** What may follow what in a lot's life, and what customers get to see of it. */

import { describe, expect, test } from 'vitest'
import {
  decisionOn,
  isSellable,
  type LotState,
  refusedStep,
  wasLetGo
} from '../../src/quality/status.ts'

/** Decisions on successive days from 1 March on. */
const life = (...states: readonly LotState[]) =>
  states.map((is, index) => ({ is, on: `2026-03-0${index + 1}` }))

describe('a step', () => {
  const refusal = (...states: readonly LotState[]) => {
    const all = life(...states)
    return refusedStep(all.slice(0, -1), all.at(-1)!)
  }

  test.for([
    [['released']],
    [['concession']],
    [['rejected']],
    [['scrapped']],
    [['quarantine', 'released']],
    [['released', 'withdrawn']],
    [['concession', 'withdrawn']],
    [['released', 'quarantine', 'withdrawn']],
    [['released', 'quarantine', 'released']],
    [['rejected', 'released']],
    [['rejected', 'scrapped']],
    [['released', 'withdrawn', 'scrapped']],
    [['released', 'withdrawn', 'quarantine', 'scrapped']]
  ] as const)('%o is allowed', ([states]) => {
    expect(refusal(...states)).toBeUndefined()
  })

  test.for([
    [['withdrawn'], 'cannot be withdrawn from quarantine'],
    [['rejected', 'withdrawn'], 'cannot be withdrawn from rejected'],
    [['released', 'withdrawn', 'released'], 'cannot be released again once withdrawn'],
    [['released', 'withdrawn', 'quarantine', 'released'], 'cannot be released again'],
    [['scrapped', 'released'], 'follows on scrapped'],
    [['scrapped', 'quarantine'], 'follows on scrapped']
  ] as const)('%o is refused: %s', ([states, message]) => {
    expect(refusal(...states)).toContain(message)
  })

  test('may fall on the day of the one before it, not on an earlier one', () => {
    const earlier = life('quarantine', 'released')
    expect(refusedStep(earlier, { is: 'withdrawn', on: '2026-03-02' })).toBeUndefined()
    expect(refusedStep(earlier, { is: 'withdrawn', on: '2026-03-01' })).toContain(
      'before the decision above it of 2026-03-02'
    )
  })
})

describe('on a day', () => {
  const decisions = life('quarantine', 'released', 'withdrawn', 'scrapped')

  test.for([
    ['2026-02-28', undefined, false],
    ['2026-03-01', 'quarantine', false],
    ['2026-03-02', 'released', true],
    ['2026-03-03', 'withdrawn', true],
    ['2026-12-31', 'scrapped', true]
  ] as const)('%s the lot is %s, let go by then: %o', ([day, state, letGo]) => {
    expect(decisionOn(decisions, day)?.is).toBe(state)
    expect(wasLetGo(decisions, day)).toBe(letGo)
  })

  test('of two decisions the later in the list holds', () => {
    const twice = [
      { is: 'released', on: '2026-03-01' },
      { is: 'withdrawn', on: '2026-03-01' }
    ] as const
    expect(decisionOn(twice, '2026-03-01')?.is).toBe('withdrawn')
  })
})

test('only what is released or under concession may leave', () => {
  const states: LotState[] = [
    'quarantine',
    'released',
    'rejected',
    'concession',
    'withdrawn',
    'scrapped'
  ]
  expect(states.filter(isSellable)).toEqual(['released', 'concession'])
})
