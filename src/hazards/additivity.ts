/**
 * The sum most rules share: each ingredient against its own limit, Σ Cᵢ/Lᵢ ≥ 1.
 *
 * With one limit for all it is the plain sum of the tables, Σ C ≥ L; with limits of their own it is
 * how specific limits are summed with generic ones.
 *
 * Source: CLP Annex I, 3.2.3.3 and 3.3.3.3; summing of specific limits after the guidance to 3.2.3.3
 * (from memory, not checked against the print).
 */

import type { Clause } from './clauses.ts'
import {
  nameOf,
  type Point,
  type Reason,
  reason,
  type Share,
  shown,
  sumOfRatios
} from './mixture.ts'
import type { Saying } from './sayings.ts'
import type { LimitLine, Substance } from './substances.ts'

/** Ingredients below it count only where a limit of their own lies lower: Table 1.1 of Annex I. */
const RELEVANT_PERCENT = 1

/** So near to 1 that the sum in floats may stand on the wrong side of it. */
const NEAR = 0.999_999

/** What an ingredient is held against, in %; its own line where the limit is the substance's. */
export interface Limit {
  readonly percent: number
  readonly line?: LimitLine
}

export const generic = (percent: number): Limit => ({ percent })
export const specific = (line: LimitLine): Limit => ({ percent: line.from_percent, line })

interface Held extends Share {
  readonly limit: Limit
}

/** The reason why a mixture reaches a class by the sum; undefined where it does not. */
export function reaches(
  { shares }: Point,
  limitOf: (substance: Substance) => Limit | undefined,
  clause: Clause,
  relevant = RELEVANT_PERCENT
): Reason | undefined {
  const held = shares.flatMap(({ substance, percent }): Held[] => {
    const limit = limitOf(substance)
    return limit && percent >= Math.min(relevant, limit.percent)
      ? [{ substance, percent, limit }]
      : []
  })
  // Far below, floats know as well, and most sums are; a decimal costs much.
  const roughly = held.reduce((sum, { percent, limit }) => sum + percent / limit.percent, 0)
  if (roughly < NEAR) return undefined
  const sum = sumOfRatios(held.map(({ percent, limit }) => [percent, limit.percent]))
  if (!(sum >= 1)) return undefined
  const own = held.flatMap(({ limit }) => (limit.line ? [limit.line] : []))
  return reason(held, sayingOf(held, sum), [clause, ...own])
}

/** Each ingredient against its limit; of several, also what they come to together. */
const sayingOf = (held: readonly Held[], sum: number): Saying => ({
  is: 'sum',
  parts: held.map(({ substance, percent, limit }) => ({
    name: nameOf(substance),
    percent: shown(percent, limit.percent),
    limit: shown(limit.percent),
    own: limit.line !== undefined
  })),
  ...(held.length === 1 ? {} : { sum: shown(sum, 1) })
})
