/**
 * Skin corrosion and irritation of mixtures: additivity, the table for what does not add up, and
 * limits of the ingredients' own, which go before both.
 *
 * Source: CLP Annex I, Tables 3.2.3 and 3.2.4; clauses.ts says how each was read.
 */

import { generic, type Limit, reaches, specific } from './additivity.ts'
import type { ClassName } from './classes.ts'
import { clauses } from './clauses.ts'
import type { Finding, Point } from './mixture.ts'
import { hasClass, ownLimit, type Substance } from './substances.ts'

/** Most severe first; plain Category 1 where no sub-category can be told. */
export const corrosive = [
  'Skin Corr. 1A',
  'Skin Corr. 1B',
  'Skin Corr. 1C',
  'Skin Corr. 1'
] as const

const CORROSIVE_PERCENT = 5
const IRRITANT_PERCENT = 10
/** Corrosive ingredients count tenfold towards irritation. */
const CORROSIVE_AS_IRRITANT_PERCENT = 1
const TENTH = 10
const NON_ADDITIVE_CORROSIVE_PERCENT = 1
const NON_ADDITIVE_IRRITANT_PERCENT = 3

/** Skin Corr. by sub-category where the sum tells one, else Skin Irrit. 2, else nothing. */
export function classifySkin(point: Point): Finding[] {
  for (const [level, name] of corrosive.entries()) {
    const clause = name === 'Skin Corr. 1' ? clauses.additivity : clauses.subCategories
    const reason = reaches(point, substance => corrosiveLimit(substance, level), clause)
    if (reason) return [{ class: name, reasons: [reason] }]
    if (name !== 'Skin Corr. 1') continue
    const alone = reaches(
      point,
      nonAdditive(corrosive, NON_ADDITIVE_CORROSIVE_PERCENT),
      clauses.nonAdditivity
    )
    if (alone) return [{ class: name, reasons: [alone] }]
  }
  const reason =
    reaches(point, irritantLimit, clauses.additivity) ??
    reaches(
      point,
      nonAdditive(['Skin Irrit. 2'], NON_ADDITIVE_IRRITANT_PERCENT),
      clauses.nonAdditivity
    )
  return reason ? [{ class: 'Skin Irrit. 2', reasons: [reason] }] : mildIrritation(point)
}

/**
 * Category 3, which the UN alone has: from a tenth of the sums for category 2 on, and by ingredients
 * of category 3 themselves.
 *
 * Source: UN GHS, Table 3.2.3 (from memory, not checked against the print).
 */
function mildIrritation(point: Point): Finding[] {
  if (point.edition !== 'un') return []
  const reason = reaches(
    point,
    substance => {
      const limit = irritantLimit(substance)
      if (limit) return limit.line ? limit : generic(limit.percent / TENTH)
      return hasClass(substance, ['Skin Irrit. 3']) ? generic(IRRITANT_PERCENT) : undefined
    },
    clauses.mildIrritation
  )
  return reason ? [{ class: 'Skin Irrit. 3', reasons: [reason] }] : []
}

/** Limit towards a corrosive sub-category: the least of those at it or above. */
function corrosiveLimit(substance: Substance, level: number): Limit | undefined {
  const reached = corrosive.slice(0, level + 1)
  if (ownLimit(substance, corrosive)) {
    const own = ownLimit(substance, reached)
    return own && specific(own)
  }
  return hasClass(substance, reached) ? generic(CORROSIVE_PERCENT) : undefined
}

/**
 * Limit towards irritation. Where an ingredient's own limits name corrosion alone, the generic one
 * for irritation holds below them: the stricter reading.
 */
function irritantLimit(substance: Substance): Limit | undefined {
  const own = ownLimit(substance, ['Skin Irrit. 2'])
  if (own) return specific(own)
  if (hasClass(substance, corrosive)) return generic(CORROSIVE_AS_IRRITANT_PERCENT)
  return hasClass(substance, ['Skin Irrit. 2']) ? generic(IRRITANT_PERCENT) : undefined
}

/** Strong acids and bases by the table for what does not add up, unless they have limits of their own. */
const nonAdditive =
  (wanted: readonly ClassName[], percent: number) =>
  (substance: Substance): Limit | undefined =>
    isNonAdditive(substance) &&
    !ownLimit(substance, [...corrosive, 'Skin Irrit. 2']) &&
    hasClass(substance, wanted)
      ? generic(percent)
      : undefined

/** A strong acid or base: its effect goes by pH, not by the sum. */
export const isNonAdditive = ({ traits }: Substance): boolean =>
  traits.some(({ trait }) => trait === 'strong acid' || trait === 'strong base')
