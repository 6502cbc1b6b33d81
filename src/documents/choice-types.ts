/** The page that leads from a need to a grade. */

import type { LimitText, UnitText } from './text-types.ts'
import type { TypicalText } from './watch-types.ts'

export interface ChoiceNeed {
  readonly key: string
  readonly title: string
  readonly unit: UnitText
}

/** What a grade has to say to one need. */
export interface ChoiceCell extends ChoiceNeed {
  readonly limit?: LimitText
  readonly typical?: TypicalText
}

/** A released lot and its stock. */
export interface ChoiceLot {
  readonly lot: string
  readonly url: string
  /** 'in stock', or how much of it; absent where stock is not shown or none is left. */
  readonly stock?: string
}

export interface ChoiceGrade {
  readonly id: string
  readonly title: string
  readonly url: string
  readonly cells: readonly ChoiceCell[]
  readonly lots: readonly ChoiceLot[]
  /** '8 released, 3 of them in stock'. */
  readonly supply: string
}

/** Grades of one kind of product, beside what is asked of such. */
export interface ChoiceKind {
  readonly id: 'flake' | 'foil'
  readonly title: string
  readonly needs: readonly ChoiceNeed[]
  readonly grades: readonly ChoiceGrade[]
}
