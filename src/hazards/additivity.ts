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
import type { LimitLine, Substance } from './substances.ts'

/** Ingredients below it count only where a limit of their own lies lower: Table 1.1 of Annex I. */
const RELEVANT_PERCENT = 1

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
  if (held.length === 0) return undefined
  const sum = sumOfRatios(held.map(({ percent, limit }) => [percent, limit.percent]))
  if (!(sum >= 1)) return undefined
  const own = held.flatMap(({ limit }) => (limit.line ? [limit.line] : []))
  return reason(held, wordSum(held, sum), [clause, ...own])
}

/** 'sulfuric acid 6 %, own limit 5 %'; of several, also what they come to together. */
function wordSum(held: readonly Held[], sum: number): string {
  const parts = held.map(
    ({ substance, percent, limit }) =>
      `${nameOf(substance)} ${shown(percent, limit.percent)} %, ${limit.line ? 'its own limit' : 'limit'} ${shown(limit.percent)} %`
  )
  return held.length === 1
    ? parts[0]!
    : `${parts.join('; ')}; shares of their limits together ${shown(sum, 1)}, limit 1`
}
