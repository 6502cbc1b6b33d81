/** The hazard block as readers see it. */

import type { Drawing } from '../figures/path.ts'

export interface HazardText {
  readonly pictograms: readonly PictogramText[]
  readonly signal?: string
  readonly statements: readonly { readonly code: string; readonly text: string }[]
  /** Of the statements, where it is not the page's. */
  readonly language?: 'en'
  /** Who says so, and that it is an aid, no legal classification. */
  readonly basis: string
  /** The wording's source: 'CLP, consolidated 2025-09-01'. */
  readonly edition: string
  /** The classes the label stands for: 'Eye Irrit. 2'. */
  readonly classified: readonly string[]
  /** Other editions the papers carry. */
  readonly editions?: readonly HazardEdition[]
  /** The statements in other languages; on pages alone. */
  readonly languages?: readonly HazardLanguage[]
  /** What was computed for the lot; absent on a grade's own page. */
  readonly computed?: ComputedHazards
  /** Who to ask about carriage: never that there is none to ask. */
  readonly transport: string
}

/** A label as another edition has it. */
export interface HazardEdition {
  /** 'UN GHS, revision 10' */
  readonly title: string
  readonly classified: readonly string[]
  readonly pictograms: readonly PictogramText[]
  readonly signal?: string
  readonly statements: readonly { readonly code: string; readonly text: string }[]
  /** Of the statements, where it is not the page's. */
  readonly language?: 'en'
  /** One sentence: 'Not classified.' where nothing stands above. */
  readonly sentence: string
  /** The wording's source. */
  readonly edition: string
}

export interface HazardLanguage {
  readonly language: 'en' | 'de' | 'fr' | 'es' | 'it'
  /** In its own language: 'Deutsch'. */
  readonly name: string
  readonly signal?: string
  readonly statements: readonly { readonly code: string; readonly text: string }[]
}

export interface PictogramText extends Drawing {
  readonly code: string
}

/** A class with its reasons taken apart, for programs. */
export interface ReasonedClass {
  readonly name: string
  readonly statement: string
  readonly reasons: readonly { readonly text: string; readonly clauses: readonly string[] }[]
  /** Set where a limit lies within the uncertainty of what was measured. */
  readonly margin?: string
}

/** A lot's classification, with every reason. */
export interface ComputedHazards {
  /** 'Computed for this lot: not classified.' */
  readonly sentence: string
  readonly state: 'complete' | 'incomplete'
  /** What it was computed from. */
  readonly from: readonly string[]
  readonly classes: readonly {
    readonly name: string
    readonly statement: string
    readonly why: readonly string[]
  }[]
  /** Disagreements, what is open, what was decided and by whom. */
  readonly notes: readonly string[]
  /** How it stands beside the producer's own classification. */
  readonly agreement: string
  /** What rules outside the European Union say of dust. */
  readonly dust?: string
}
