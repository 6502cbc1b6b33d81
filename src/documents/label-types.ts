/** A label, worded; sizes are decided where it is set. */

import type { LabelMinima, LabelProfile } from '../hazards/label-size.ts'
import type { Edition } from '../hazards/editions.ts'
import type { Language } from '../hazards/statements.ts'
import type { Container } from '../records/types.ts'
import type { PictogramText } from './hazard-types.ts'

/** A text and its language, for who hears it. */
export interface Spoken {
  readonly language: Language
  readonly text: string
}

/** What is said of hazards and storage in one language. */
export interface LabelBlock {
  readonly language: Language
  readonly signal?: string
  readonly hazards: readonly string[]
  readonly precautions: readonly string[]
  /** 'Contains: sulfuric acid'. */
  readonly contains?: string
  readonly storage?: string
  /** Where the rest stands, on a container too small for it. */
  readonly outer?: string
}

/** Everything on one label. */
export interface LabelContent {
  /** The trade name: the grade's number. */
  readonly name: string
  /** What it is, once in each language. */
  readonly product: readonly Spoken[]
  /** 'CAS 12777-87-6', 'EC 235-819-4'. */
  readonly identifiers: readonly string[]
  readonly pictograms: readonly PictogramText[]
  readonly blocks: readonly LabelBlock[]
  /** Lot, quantity, dates: a label in all languages, and a text that is the same in each. */
  readonly facts: readonly { readonly label: string; readonly text: string }[]
  /** Name, address and telephone, a line each. */
  readonly supplier: readonly string[]
  /** Which wording its statements have, in a few letters: 'CLP 2025-09-01'. */
  readonly wording?: string
  readonly code?: { readonly url: string; readonly alt: string }
}

export interface LabelDocument {
  readonly lot: string
  readonly title: string
  /** Which rules and which wording it follows. */
  readonly subject: string
  readonly author: string
  /** Day the lot was made; never the clock. */
  readonly dated: string
  readonly languages: readonly Language[]
  readonly minima: LabelMinima
  /** Sides to try, the least allowed first, shorter side first. */
  readonly sizes_mm: readonly (readonly [number, number])[]
  /** The fullest first: what follows may stand where a label of the least size cannot hold it. */
  readonly contents: readonly LabelContent[]
  /** 'EB-26-001-drum-60L-de.pdf'. */
  readonly fileName: string
}

/** Rules, wording and languages of labels, as a market has them. */
export interface LabelRules {
  readonly profile: LabelProfile
  /** Of the statements at the European sizes: CLP's where nothing is said; `us` has its own. */
  readonly wording?: Exclude<Edition, 'us'>
  readonly languages: readonly Language[]
}

/** What labels are wanted. */
export interface LabelWish extends LabelRules, LabelChoice {}

/** For which containers. */
export interface LabelChoice {
  /** The grade's own where none are named. */
  readonly containers?: readonly Container[]
  /** Of the grade's own, those of this kind alone. */
  readonly kind?: Container['kind']
}
