/** What this workshop's own past batches and furnace runs lead one to expect. */

import type { EvaluatedContent } from '../evaluate/types.ts'
import { coverageFactor } from '../metrology/coverage.ts'
import { standardDeviation } from '../metrology/readings.ts'
import type { PastYields } from './types.ts'

/** Mass yields of batches of a grade made by a day, in %; blends have none of their own. */
const yieldsOf = ({ lots }: EvaluatedContent, grade: string, day: string): number[] =>
  [...lots.values()].flatMap(lot =>
    lot.kind === 'batch' && lot.entry.record.grade === grade && lot.entry.record.made <= day
      ? (lot.process.massYield_percent?.estimate.value ?? [])
      : []
  )

/**
 * Yields so far, and the interval the next is expected in: mean ± t · s · √(1 + 1/n).
 *
 * Source: prediction interval of one further normal value, any textbook of statistics.
 */
export function pastYields(content: EvaluatedContent, grade: string, day: string): PastYields {
  const values = yieldsOf(content, grade, day)
  const n = values.length
  if (n === 0) return { n }
  const mean_percent = values.reduce((sum, value) => sum + value, 0) / n
  const s = standardDeviation(values)
  if (s === undefined) return { n, mean_percent }
  const half = coverageFactor(n - 1) * s * Math.sqrt(1 + 1 / n)
  return {
    n,
    mean_percent,
    next: { low_percent: mean_percent - half, high_percent: mean_percent + half }
  }
}

/** The largest loss on expansion there was; undefined before the first furnace run. */
export function largestLoss({ lots }: EvaluatedContent, day: string): number | undefined {
  const losses = [...lots.values()].flatMap(lot =>
    lot.kind === 'expansion' && lot.entry.record.made <= day
      ? (lot.process.lossOnExpansion_percent?.estimate.value ?? [])
      : []
  )
  return losses.length > 0 ? Math.max(...losses) : undefined
}
