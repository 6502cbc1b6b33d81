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
