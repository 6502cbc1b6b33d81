/** One amount taken from a lot, and what for. */

import type { FieldPath } from '../problem.ts'
import type { Entry } from '../records/types.ts'

/** What an amount was taken for. */
export type Purpose = 'used' | 'tested' | 'retained' | 'shipped' | 'lost'

/** One amount taken from a lot. */
export interface Use {
  readonly purpose: Purpose
  readonly lot: string
  readonly mass_g: number
  readonly by: string
  readonly on: string
  /** Container of the lot it was taken from, where that was recorded. */
  readonly container?: string | undefined
  /** The last digit of the mass, in g, where it was weighed as one. */
  readonly step_g?: number
  readonly entry: Entry<unknown>
  readonly field: FieldPath
}
