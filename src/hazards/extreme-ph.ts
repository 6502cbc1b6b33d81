/**
 * The pH rule: a mixture of extreme pH is taken as corrosive, unless other information speaks
 * against it. It gives no sub-category.
 *
 * Source: CLP Annex I, 3.2.3.1.2. Acid or alkaline reserve may argue otherwise only where other data
 * confirm it, so a reserve is not asked for here.
 */

import { clauses } from './clauses.ts'
import { type Finding, type Point, reason, shown } from './mixture.ts'

export const ACID_PH = 2
export const ALKALINE_PH = 11.5

/** Skin Corr. 1 by pH alone; nothing where no pH is known. */
export function classifyExtremePH({ pH }: Point): Finding[] {
  if (pH === undefined || (pH > ACID_PH && pH < ALKALINE_PH)) return []
  const text =
    pH <= ACID_PH
      ? `pH ${shown(pH, ACID_PH)}, at or below ${ACID_PH}`
      : `pH ${shown(pH, ALKALINE_PH)}, at or above ${ALKALINE_PH}`
  return [{ class: 'Skin Corr. 1', reasons: [reason([], text, [clauses.extremePH])] }]
}
