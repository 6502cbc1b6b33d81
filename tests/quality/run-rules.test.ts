/** Patterns, each made and each just missed, and how often chance makes them. */

import { expect, test } from 'vitest'
import { individualsChart } from '../../src/quality/individuals.ts'
import { type RuleName, runRules, signalsIn } from '../../src/quality/run-rules.ts'
import { normalDraws } from './draws.ts'
import { averaged, flowRates } from './handbook.ts'

const standard = { centre: 0, lower: -3, upper: 3 }

const seen = (z: readonly number[]) =>
  signalsIn(z, standard).map(({ rule, from, at }) => [rule.name, from, at])

const times = (n: number, z: number) => Array.from({ length: n }, () => z)
const turns = (n: number, a: number, b: number) =>
  Array.from({ length: n }, (_, index) => (index % 2 ? b : a))

// L. S. Nelson, JQT 16 (1984), figure 1: the eight tests. Zigzags of unequal steps keep the other
// tests silent.
const quiet = [0.4, -1.3, 0.6, -0.2, 1.4]

test.for<[RuleName, readonly number[], readonly number[]]>([
  ['beyond limits', [0, 3.01], [0, 3]],
  ['beyond limits', [0, -3.01], [0, -3]],
  ['run on one side', [...turns(8, 0.1, 0.3), 0.1], [...turns(8, 0.1, 0.3), -0.1]],
  ['run on one side', [...turns(8, -0.1, -0.3), -0.1], [...turns(8, -0.1, -0.3), 0]],
  ['steady trend', [-0.5, -0.3, -0.1, 0.1, 0.3, 0.5], [-0.5, -0.3, -0.1, 0.1, 0.3, 0.3]],
  ['steady trend', [0.5, 0.3, 0.1, -0.1, -0.3, -0.5], [0.5, 0.3, 0.1, -0.1, -0.3, -0.2]],
  ['alternating', turns(14, 0.2, -1.2), turns(13, 0.2, -1.2)],
  ['two of three far out', [2.1, 0, 2.1], [2.1, 0, -2.1]],
  ['two of three far out', [0, -2.1, -2.1], [0, -2.1, -2]],
  ['four of five out', [1.1, 1.2, 0, 1.1, 1.3], [1.1, 1.2, 0, 1.1, 1]],
  ['four of five out', [-1.1, -1.2, 0, -1.1, -1.3], [-1.1, -1.2, 0, -1.1, 1.3]],
  ['hugging the centre', [...quiet, ...times(15, 0)], [...quiet, ...times(14, 0), -1]],
  ['shunning the centre', turns(8, 1.1, -1.2), [...turns(7, 1.1, -1.2), 0.9]]
])('%s: one that shows it, one that misses it by a little', ([name, shows, misses]) => {
  expect(seen(shows)).toEqual([[name, expect.any(Number), shows.length - 1]])
  expect(seen(misses)).toEqual([])
})

// Western Electric (1956) calls 8 in a row a run, Nelson 9.
test('eight in a row is no run yet, the ninth is', () => {
  expect(seen(turns(8, 0.1, 0.2))).toEqual([])
  expect(seen(turns(9, 0.1, 0.2))).toEqual([['run on one side', 0, 8]])
})

test('a run that goes on is told once, each figure beyond the limits is told', () => {
  expect(seen([...times(12, 0.1), -0.4, 3.5, -0.3, -3.5])).toEqual([
    ['run on one side', 0, 8],
    ['beyond limits', 13, 13],
    ['beyond limits', 15, 15]
  ])
})

test('each of two figures in a row beyond the limits is told', () => {
  const beyond = seen([0.2, 3.5, 3.4]).filter(([name]) => name === 'beyond limits')
  expect(beyond).toEqual([
    ['beyond limits', 1, 1],
    ['beyond limits', 2, 2]
  ])
})

test('four far out at the very beginning are told at the fourth', () => {
  expect(seen([1.1, 1.2, 1.1, 1.3])).toEqual([['four of five out', 0, 3]])
})

test('eight far out on one side are not on both', () => {
  expect(seen(times(8, 1.2)).map(([name]) => name)).toEqual(['four of five out'])
})

test('two far out at the very beginning are told at the second, not after a third', () => {
  expect(seen([2.1, 2.2, 0])).toEqual([['two of three far out', 0, 1]])
})

// NIST/SEMATECH e-Handbook, 6.3.2.2 and 6.3.2.4: neither chart is said to signal beyond its limits.
test('the flow rates of the handbook show no pattern', () => {
  expect(signalsIn(flowRates, individualsChart(flowRates))).toEqual([])
  const names = signalsIn(averaged, individualsChart(averaged)).map(({ rule }) => rule.name)
  expect(names).not.toContain('beyond limits')
})

test('figures that never differ make no pattern', () => {
  expect(signalsIn([5, 5, 5, 5, 5, 5, 5, 5, 5, 5], individualsChart(times(10, 5)))).toEqual([])
})

test('a pattern is one of distances: unit and level do not matter', () => {
  const figures = [1.1, 1.2, 0, 1.1, 1.3].map(z => 70 + 4 * z)
  const found = signalsIn(figures, { centre: 70, lower: 58, upper: 82 })
  expect(found.map(({ rule }) => rule.name)).toEqual(['four of five out'])
})

test.for(runRules.map(rule => [rule.name, rule] as const))(
  '%s: chance makes it as often as stated',
  ([, { window, holds, falseAlarm }]) => {
    const draws = 20000
    const made = normalDraws(draws, window, 3).filter(z => holds(z)).length
    const scatter = Math.sqrt(falseAlarm / draws)
    expect(Math.abs(made / draws - falseAlarm)).toBeLessThan(3.5 * scatter)
  }
)
