/**
 * Irritation of the airways and narcotic effects (STOT SE 3), each summed for itself. An ingredient
 * with a limit of its own is judged by that alone and stays out of the sum.
 *
 * Source: CLP Annex I, 3.8.3.4.5 (from memory, not checked against the print).
 */

import { generic, reaches, specific } from './additivity.ts'
import { clauses } from './clauses.ts'
import type { Finding, Point } from './mixture.ts'
import { hasClass, ownLimit } from './substances.ts'

const SUM_PERCENT = 20

const effects = ['STOT SE 3 airways', 'STOT SE 3 narcotic'] as const

/** Every transient effect the mixture reaches. */
export const classifyTransient = (point: Point): Finding[] =>
  effects.flatMap(name => {
    const alone = point.shares.flatMap(share => {
      const own = ownLimit(share.substance, [name])
      const found = own && reaches({ shares: [share] }, () => specific(own), clauses.transient)
      return found ? [found] : []
    })
    const sum = reaches(
      point,
      substance =>
        !ownLimit(substance, [name]) && hasClass(substance, [name])
          ? generic(SUM_PERCENT)
          : undefined,
      clauses.transient
    )
    const reasons = [...alone, ...(sum ? [sum] : [])]
    return reasons.length > 0 ? [{ class: name, reasons }] : []
  })
