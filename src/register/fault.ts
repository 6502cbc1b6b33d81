/** Something wrong with a register, found by reading it. */

import type { ProblemCode } from '../problem.ts'

export type RegisterCode = Extract<ProblemCode, `REGISTER_${string}`>

export interface Fault {
  /** Line of the log, from 1; 0 where the fault is of no line. */
  readonly line: number
  readonly code: RegisterCode
  /** What is wrong and what it means: no leading capital, no final full stop. */
  readonly sentence: string
}

/** A fault before its line is known. */
export type Flaw = readonly [code: RegisterCode, sentence: string]

export const faultAt = (line: number, [code, sentence]: Flaw): Fault => ({ line, code, sentence })

/** Whether a line is dated before the one above it. */
export const dateFlaw = (date: string, above: string): Flaw | undefined =>
  date < above
    ? ['REGISTER_DATE_ORDER', `${date} comes before ${above}, the line above`]
    : undefined

/** A whole result, or every fault that stopped it. */
export type Outcome<T> =
  ({ readonly ok: true } & T) | { readonly ok: false; readonly faults: readonly Fault[] }
