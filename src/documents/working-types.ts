/** How a figure came about, as readers see it. */

import type { Drawing } from '../figures/drawing.ts'
import type { FormulaText } from './formula-types.ts'
import type { Table } from './text-types.ts'

/** How a figure came about, for a reader who wants to recompute it. */
export interface Working {
  readonly key: string
  readonly title: string
  /** In plain typography: 'EV = V / m'. */
  readonly formula: string
  /** The same, statement by statement, as mathematics. */
  readonly statements: readonly FormulaText[]
  /** Where the formula comes from. */
  readonly source: string
  /** 'TM-01, edition 1: Expansion volume at 950 °C'; absent where it was not measured by one. */
  readonly method?: string
  /** The figure this ends in: '262 mL/g ± 8 mL/g (k = 2.04, 31 degrees of freedom)'. */
  readonly outcome: string
  /** Readings as written in the record. */
  readonly readings?: Table
  /** Model inputs of one reading with their uncertainties. */
  readonly inputs: Table
  /** One line a cause. */
  readonly budget: Table
  readonly notes: readonly string[]
  /** Of thickness read at known places. */
  readonly field?: FieldText
}

/** Readings where they were taken: drawn sheet by sheet, and listed for who cannot see it. */
export interface FieldText {
  /** What the shades stand for. */
  readonly legend: string
  readonly maps: readonly {
    readonly id: string
    readonly title: string
    /** What the drawing shows, in words. */
    readonly summary: string
    readonly drawing: Drawing
  }[]
  readonly places: Table
}
