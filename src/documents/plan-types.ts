/** A plan as a reader sees it: worded and rounded once. */

import type { Fact, Figure, Table } from './types.ts'

/** One lot to take from. */
export interface PlanLine {
  readonly as: string
  readonly name: string
  readonly lot: string
  /** Of its containers, the one to take it from. */
  readonly container?: string
  /** Mass to weigh in, g. */
  readonly mass: Figure
  /** Volume at 20 °C of the part in all, mL. */
  readonly volume?: Figure
  readonly left: Figure
}

export interface PlanDocument {
  readonly title: string
  /** YYYY-MM-DD. */
  readonly day: string
  readonly facts: readonly Fact[]
  readonly lines: readonly PlanLine[]
  readonly amounts: Table
  /** What the figures come to: heats, neutraliser, washing, gas, waste. */
  readonly figures: readonly {
    readonly label: string
    readonly value: Figure
    readonly unit: string
    readonly note?: string
  }[]
  readonly cautions: readonly { readonly heading: string; readonly texts: readonly string[] }[]
  /** What the plan is not, and who decides. */
  readonly statements: readonly string[]
}
