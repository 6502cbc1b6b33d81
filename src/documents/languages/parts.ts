/** Parts of sentences that every language words, each in its own order. */

import type { VisualVerdict } from '../../judge/visual.ts'

/** How many limits a lot meets, misses or cannot be held against. */
export interface Count {
  /** Limits the sentence is about, of `total`. */
  readonly n: number
  readonly total: number
  /** 'grade foil-100, revision 2', in the language. */
  readonly grade: string
  /** Of the quantities concerned, as a list. */
  readonly titles: string
}

/** A decision on a lot, its texts in the language and without their full stop. */
export interface DecisionText {
  readonly on: string
  readonly by: string
  readonly because?: string | undefined
}

/** A sampling plan, its figures as the language writes them. */
export interface PlanText {
  readonly level: string
  readonly aql: string
  /** Of the lot's size and, where the table sends on, of the sample. */
  readonly letters: readonly string[]
  readonly sampleSize: number
  /** Whether its acceptance number is held to a print; else it is from memory. */
  readonly isPrinted: boolean
  readonly acceptance: number
  readonly rejection: number
}

/** What looking at foil came to, its figures as the language writes them. */
export interface VisualParts extends Omit<VisualVerdict, 'plan'> {
  readonly plan?: PlanText & { readonly acceptedAtAql: string; readonly onceInTen: string }
}

/** A report on a grade in service, its texts in the language. */
export interface ServiceParts {
  readonly says: string
  readonly method: string
  /** Absent where it is not to be named. */
  readonly laboratory?: string
  readonly number: string
  readonly date: string
}

/** A quantity's title in the language, by its key. */
export type Titled = (key: string) => string

/** A sampling plan applied to foil that was looked at. */
export interface PlanParts extends Omit<VisualVerdict, 'plan'>, PlanText {}
