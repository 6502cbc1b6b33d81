/** A grade's page and its datasheet, which say the same. */

import type { PaperLanguage } from '../records/schemas/common.ts'
import type { LotSummary } from './list-types.ts'
import type { SafetyNotes } from './safety-types.ts'
import type { HazardText } from './hazard-types.ts'
import type { Fact, LimitText, MethodText, ProducerText, Table, UnitText } from './text-types.ts'
import type { ChartText, TypicalText } from './watch-types.ts'

/** A property that is measured on each lot. */
export interface MeasuredProperty {
  readonly key: string
  readonly title: string
  /** What each lot must meet; absent where the figure is reported alone. */
  readonly limit?: LimitText
  readonly unit: UnitText
  readonly method?: MethodText
}

/** What is typical of lots, beside what each must meet. */
export interface TypicalProperty extends TypicalText {
  readonly limit?: LimitText
}

/** What is said without a test on lots, or that nothing is. */
export interface DeclaredText {
  /** 'Origin'. */
  readonly about: string
  readonly says: string
  /** 'Basis: … Declared on 2 March 2026 by the quality manager.'; absent where nothing is declared. */
  readonly basis?: string
}

export interface GradeRevision {
  readonly revision: string
  readonly validFrom: string
  /** What differs from the revision before; computed, never typed. */
  readonly changes: readonly string[]
}

/** A chart whose figures stand in a table. */
export interface TabledChart extends ChartText {
  readonly table: Table
}

/**
 * A datasheet: what a producer says of a grade to everyone. It is the same whatever the edition, and
 * what it says of lots is of lots that customers may see.
 */
export interface Datasheet {
  readonly language: PaperLanguage
  readonly paper: 'A4' | 'Letter'
  readonly producer: ProducerText
  readonly id: string
  readonly title: string
  readonly revision: string
  readonly validFrom: string
  /** The day it is as of, YYYY-MM-DD and in words. */
  readonly dated: string
  readonly asOf: string
  readonly kind: string
  readonly description: string
  readonly facts: readonly Fact[]
  /** Declared: neither measured nor typical. */
  readonly declared: readonly DeclaredText[]
  readonly decisionRule: string
  readonly measured: readonly MeasuredProperty[]
  /** What its lots were found to be, where there are enough of them. */
  readonly observed: readonly TypicalProperty[]
  /** Which lots these are, and how the intervals are to be read. */
  readonly population: readonly string[]
  /** Stated as typical without its own figures. */
  readonly typical: readonly Fact[]
  readonly notMeasured: readonly string[]
  readonly charts: readonly ChartText[]
  readonly density: readonly TabledChart[]
  /** Sizes, containers, packing, storage, retest. */
  readonly supply: readonly Fact[]
  readonly hazards?: HazardText
  readonly cautions: readonly string[]
  readonly safety: SafetyNotes
  /** Latest first. */
  readonly revisions: readonly GradeRevision[]
  /** What it is not. */
  readonly statements: readonly string[]
  /** Address of the grade's page, if the producer has a site. */
  readonly address?: string
}

export interface GradeDocument extends Datasheet {
  readonly url: string
  /** The datasheet as a file. */
  readonly datasheetUrl: string
  /** Page of its figures lot by lot; absent where there is none. */
  readonly watchUrl?: string
  readonly lots: readonly LotSummary[]
}
