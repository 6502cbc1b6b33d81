/** What the figures of batches, furnace runs and foil share: opening a step, sums, stated figures. */

import { type Estimate, measured, propagate, rectangular } from '../metrology/estimate.ts'
import type { BudgetLineParts } from '../metrology/budget-line.ts'
import type { Reading } from '../metrology/written.ts'
import type { Batch } from '../records/types.ts'
import { type Bench, openSession, type Session } from './bench.ts'

export const openStep = (
  bench: Bench,
  { made, instruments }: Pick<Batch, 'made' | 'instruments'>,
  field: string
): Session => openSession(bench, made, [field], undefined, instruments)

/** Sum of weighed amounts. */
export function total(parts: readonly Estimate[]): Estimate {
  const inputs = Object.fromEntries(parts.map((part, index) => [`part${index}`, part]))
  return propagate(x => Object.values(x).reduce((sum, part) => sum + part, 0), inputs)
}

/** A figure somebody else found: its last digit is all that is known of how sure it is. */
export const asStated = (
  { value, resolution }: Reading,
  name: string,
  line?: BudgetLineParts
): Estimate => measured(value, rectangular(resolution), name, Infinity, line)
