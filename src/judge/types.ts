/** A lot against its grade: what each limit says of it, and the state it is in. */

import type { EvaluatedBatch, EvaluatedFoil, Result } from '../evaluate/types.ts'
import type { Bounds, DecisionRule, Verdict, VerdictWord } from '../quality/judge.ts'
import type { LotState } from '../quality/status.ts'
import type { QuantityName } from '../quantities.ts'
import type { Limit } from '../records/schemas/grade.ts'
import type { Batch, Grade } from '../records/types.ts'
import type { LotHazards } from './lot-hazards.ts'

export type Scope = NonNullable<Limit['of']>

/** Where a limit holds for many figures: the worst of them. */
export interface Worst {
  readonly label: string
  readonly value: number
  readonly expandedUncertainty: number
  readonly count: number
}

/** One quantity of a lot: measured, limited, or both. */
export interface JudgedRow {
  readonly quantity: QuantityName
  readonly result?: Result
  readonly limit?: Limit
  readonly bounds?: Bounds
  readonly scope: Scope
  /** Decimals the grade reports it with; U's own digits where it says nothing. */
  readonly places?: number
  /** Absent without a limit or a result. */
  readonly verdict?: Verdict
  readonly worst?: Worst
}

export type Decision = NonNullable<Batch['status']>[number]

export interface JudgedLot {
  readonly evaluated: EvaluatedBatch | EvaluatedFoil
  /** The grade's revision in force when the lot was made, or regraded to it. */
  readonly grade: Grade
  readonly rule: DecisionRule
  /** The day it is judged as of. */
  readonly asOf: string
  readonly rows: readonly JudgedRow[]
  /** Worst of the verdicts; 'not judged' where a limit has no result or the grade has no limit. */
  readonly word: VerdictWord | 'not judged'
  readonly state: LotState
  /** The decision that put it there. */
  readonly decision?: Decision
  /** Absent where the grade declares no hazards. */
  readonly hazards?: LotHazards
}
