/** A test block of a record to a result: one figure a reading, their mean, and the working. */

import type { Computed, Estimate } from '../metrology/estimate.ts'
import type { UnitName } from '../metrology/units.ts'
import type { Reading } from '../metrology/written.ts'
import { quantities } from '../quantities.ts'
import type { Role } from '../records/schemas/common.ts'
import { type Bench, openSession, read, type Session } from './bench.ts'
import { instrumentsFor, type MethodOf } from './flake.ts'
import { type Account, type OpenFigure, repeatedResult } from './result.ts'
import type { Column, Result } from './types.ts'

/** What stands at the head of every test block. */
export interface TestHead {
  readonly tested: string
  readonly method?: string | undefined
  readonly instruments?: Session['instruments'] | undefined
  readonly deviation?: string | undefined
}

/** How one kind of test is read. */
export interface BlockPlan<Reading> extends OpenFigure, Pick<Account, 'nearNothing' | 'alike'> {
  /** The block in the typed record: 'bulkDensity'. */
  readonly block: string
  readonly columns: readonly Column[]
  /** A reading as written, a text a column. */
  readonly written: (reading: Reading) => readonly string[]
  /** What each input of the model is read on. */
  readonly roles: Readonly<Record<string, Role>>
}

/** Reads one value of a reading: its instrument, its resolution, and a name for the budget. */
export type Take = (value: Reading, unit: UnitName, role: Role, name: string) => Estimate

/** Start a test's readings by its own method, or the one its grade names for the quantity. */
export const openBlock = (
  bench: Bench,
  { tested, method, instruments }: TestHead,
  block: string,
  key: string,
  methodOf: MethodOf
): Session => openSession(bench, tested, ['tests', block], method ?? methodOf(key), instruments)

/** The result of a block's readings; undefined where the record has none of it. */
export function blockResult<One>(
  bench: Bench,
  methodOf: MethodOf,
  test: (TestHead & { readonly readings: readonly One[] }) | undefined,
  plan: BlockPlan<One>,
  model: (take: Take, reading: One) => Computed
): Result | undefined {
  if (!test) return undefined
  const { quantity, block, columns, written, roles } = plan
  const session = openBlock(bench, test, block, quantities[quantity].key, methodOf)
  const account: Account = {
    quantity,
    basis: plan.basis,
    written: { columns, rows: test.readings.map(written) },
    instrumentOf: instrumentsFor(session, roles),
    deviation: test.deviation,
    ...(plan.notes ? { notes: plan.notes } : {}),
    ...(plan.nearNothing ? { nearNothing: true } : {}),
    ...(plan.alike ? { alike: true } : {})
  }
  return repeatedResult(session, test.readings, account, (reading, what) =>
    model((value, unit, role, name) => read(session, value, unit, role, `${what} ${name}`), reading)
  )
}
