/** The smallest parts of what readers see. */

/** A number as computed (12 significant digits) and as a reader sees it. */
export interface Figure {
  readonly exact: string
  readonly printed: string
}

export interface UnitText {
  /** As shown after a number: 'mL/g'; empty for a plain number. */
  readonly printed: string
  readonly ucum: string
}

/** Label and text, for the head of a page or certificate. */
export interface Fact {
  readonly label: string
  readonly text: string
}

export interface Table {
  readonly caption: string
  readonly columns: readonly { readonly title: string; readonly numeric: boolean }[]
  readonly rows: readonly (readonly string[])[]
}

export interface MethodText {
  readonly id: string
  readonly edition: string
  readonly title: string
  readonly conditions: string
  readonly reference?: string
  readonly deviation?: string
}

export interface LimitText {
  readonly min?: Figure
  readonly max?: Figure
  /** '≥ 250', '≤ 0.30', '0.95 to 1.05', without the unit. */
  readonly printed: string
  /** What it holds for: 'lot mean', 'every sheet', 'every reading'. */
  readonly of: string
}

export interface ProducerText {
  readonly name: string
  readonly address: readonly string[]
  readonly email: string
  readonly telephone: string
  readonly site?: string
}
