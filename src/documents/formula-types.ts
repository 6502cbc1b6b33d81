/** The parts a formula is made of, for any renderer. */

/** A stretch of a name: upright on the line, lowered or raised. */
export interface NamePart {
  readonly text: string
  readonly at: 'line' | 'below' | 'above'
}

export type Maths =
  | { readonly is: 'row'; readonly parts: readonly Maths[] }
  | { readonly is: 'name'; readonly parts: readonly NamePart[] }
  | { readonly is: 'number' | 'sign' | 'function'; readonly text: string }
  | { readonly is: 'subscript'; readonly base: Maths; readonly below: string }
  | { readonly is: 'power'; readonly base: Maths; readonly power: string }
  | { readonly is: 'fraction'; readonly above: Maths; readonly below: Maths }
  | { readonly is: 'root' | 'bracket'; readonly of: Maths }

/** One statement of a formula: as text, and as mathematics where it is some. */
export interface FormulaText {
  readonly text: string
  readonly maths?: Maths
}
