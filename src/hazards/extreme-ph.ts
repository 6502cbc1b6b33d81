/**
 * The pH rule: a mixture of extreme pH is taken as corrosive, unless other information speaks
 * against it. It gives no sub-category.
 *
 * Source: CLP Annex I, 3.2.3.1.2. Acid or alkaline reserve may argue otherwise only where other data
 * confirm it, so a reserve is not asked for here.
 */

import { clauses } from './clauses.ts'
import { type Finding, type Point, reason, shown } from './mixture.ts'
import type { Saying } from './sayings.ts'

export const ACID_PH = 2
export const ALKALINE_PH = 11.5

/** Skin Corr. 1 by pH alone; nothing where no pH is known. */
export function classifyExtremePH({ pH }: Point): Finding[] {
  if (pH === undefined || (pH > ACID_PH && pH < ALKALINE_PH)) return []
  const isLow = pH <= ACID_PH
  const limit = isLow ? ACID_PH : ALKALINE_PH
  const said: Saying = {
    is: 'extreme pH',
    pH: shown(pH, limit),
    limit: String(limit),
    side: isLow ? 'low' : 'high'
  }
  return [{ class: 'Skin Corr. 1', reasons: [reason([], said, [clauses.extremePH])] }]
}
