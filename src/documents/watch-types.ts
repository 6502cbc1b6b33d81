/** How a grade's figures run from lot to lot, worded and rounded once. */

import type { Drawing } from '../figures/drawing.ts'
import type { Fact, Figure, UnitText } from './text-types.ts'

/** What is typical of a grade: an interval, with what it rests on. Never a bare mean. */
export interface TypicalText {
  readonly key: string
  readonly title: string
  readonly unit: UnitText
  readonly lower: Figure
  readonly upper: Figure
  /** '247 to 285', without the unit. */
  readonly printed: string
  /** Lots behind it. */
  readonly n: number
  /** '20 January 2026 to 3 November 2026'. */
  readonly period: string
  readonly kind: 'normal' | 'distribution-free'
  /** Part of the lots it holds and the confidence that it does, in %. */
  readonly coverage: Figure
  readonly confidence: Figure
  /** All of it in one sentence. */
  readonly sentence: string
}

/** A chart with the words that stand for it. */
export interface ChartText {
  readonly id: string
  readonly title: string
  /** What it shows, for who does not see it; the figures are in the table beside it. */
  readonly summary: string
  readonly drawing: Drawing
}

/** One lot's figure in the table beside a chart. */
export interface WatchedLot {
  readonly lot: string
  /** Absent where the edition has no page of it. */
  readonly url?: string
  readonly made: string
  /** '262 ± 8'; '< 0.02' below the reporting limit; without the unit. */
  readonly value: string
  /** What is to be noted of it: a pattern it completes, where it was measured. */
  readonly note?: string
}

export interface WatchedQuantity {
  readonly key: string
  readonly title: string
  readonly unit: UnitText
  /** '11 lots made 20 January 2026 to 3 November 2026.' */
  readonly population: string
  /** Patterns warned of. */
  readonly signals: readonly string[]
  readonly charts: readonly ChartText[]
  readonly typical?: TypicalText
  /** In the workshop edition: limits, capability, intervals, outliers, shape, scatter. */
  readonly findings: readonly Fact[]
  readonly lots: readonly WatchedLot[]
}

/** The page of one grade. */
export interface WatchDocument {
  readonly grade: { readonly id: string; readonly title: string; readonly url: string }
  readonly url: string
  /** Whose figures these are, and what follows from that. */
  readonly population: string
  /** How to read the charts and what is said beside them. */
  readonly reading: readonly string[]
  readonly quantities: readonly WatchedQuantity[]
}

/** One figure of a lot among those of the other lots of its grade. */
export interface StandingFigure {
  readonly key: string
  readonly title: string
  /** '262 ± 8 mL/g'. */
  readonly value: string
  /** Least and greatest of the others: '247 to 285 mL/g'. */
  readonly others: string
  /** 'above 2, below 1, not told apart from 4 of 7'. */
  readonly place: string
  readonly drawing: Drawing
}

/** A lot's place among the lots of its grade, as of the site's day. */
export interface StandingText {
  /** Whom it stands among, and how the drawings are read. */
  readonly sentence: string
  readonly figures: readonly StandingFigure[]
}
