/** Parts of sentences that every language words, each in its own order. */

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
