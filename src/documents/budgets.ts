/** What a lot's published figures are uncertain by, cause by cause, for comparing it with others. */

import type { JudgedRow } from '../judge/types.ts'
import { quantities } from '../quantities.ts'

/** One cause of one figure. */
export interface CauseText {
  readonly name: string
  readonly pool: string
  /** Absent where unlimited. */
  readonly df?: number
  /** Signed standard uncertainty, unrounded, in the figure’s unit. */
  readonly exact: number
}

/** The causes of each figure, by the quantity's key. */
export type Budgets = Readonly<Record<string, readonly CauseText[]>>

/** Of figures measured here; of a report nothing but its sum is known. */
export const budgetsOf = (rows: readonly JudgedRow[]): Budgets =>
  Object.fromEntries(
    rows.flatMap(({ quantity, result }) =>
      result && !result.report && result.below === undefined
        ? [[quantities[quantity].key, causesOf(result.estimate)]]
        : []
    )
  )

const causesOf = ({ terms }: NonNullable<JudgedRow['result']>['estimate']): CauseText[] =>
  [...terms.values()].map(({ cause: { name, pool, df }, u }) => ({
    name,
    pool,
    exact: u,
    ...(Number.isFinite(df) ? { df } : {})
  }))
