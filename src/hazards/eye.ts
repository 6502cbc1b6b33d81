/**
 * Serious eye damage and eye irritation of mixtures.
 *
 * Source: CLP Annex I, Tables 3.3.3 and 3.3.4 (from memory, not checked against the print).
 */

import { generic, type Limit, reaches, specific } from './additivity.ts'
import type { ClassName } from './classes.ts'
import { clauses } from './clauses.ts'
import { type Finding, type Point, reason } from './mixture.ts'
import { corrosive, isNonAdditive } from './skin.ts'
import { hasClass, ownLimit, type Substance } from './substances.ts'

/** A substance is counted once, be it for skin or for eyes. */
const damaging: readonly ClassName[] = [...corrosive, 'Eye Dam. 1']

const DAMAGING_PERCENT = 3
const IRRITANT_PERCENT = 10
const DAMAGING_AS_IRRITANT_PERCENT = 1
const NON_ADDITIVE_DAMAGING_PERCENT = 1
const NON_ADDITIVE_IRRITANT_PERCENT = 3

/** Eye Dam. 1, else Eye Irrit. 2, else nothing, from the ingredients. */
export function classifyEye(point: Point): Finding[] {
  const damage =
    reaches(point, damageLimit, clauses.eyeAdditivity) ??
    reaches(point, nonAdditive(damaging, NON_ADDITIVE_DAMAGING_PERCENT), clauses.eyeNonAdditivity)
  if (damage) return [{ class: 'Eye Dam. 1', reasons: [damage] }]
  const irritation =
    reaches(point, irritantLimit, clauses.eyeAdditivity) ??
    reaches(
      point,
      nonAdditive(['Eye Irrit. 2'], NON_ADDITIVE_IRRITANT_PERCENT),
      clauses.eyeNonAdditivity
    )
  return irritation ? [{ class: 'Eye Irrit. 2', reasons: [irritation] }] : []
}

/** What corrodes skin damages eyes: given with every corrosive class, whatever the ingredients say. */
export const eyeOfCorrosive = (name: ClassName): Finding => ({
  class: 'Eye Dam. 1',
  reasons: [reason([], { is: 'follows', from: name }, [clauses.eyeOfCorrosive])]
})

/**
 * Its own limit for eyes; where it has one for irritation only, damage goes by its own corrosive
 * limit.
 */
function damageLimit(substance: Substance): Limit | undefined {
  const own =
    ownLimit(substance, ['Eye Dam. 1']) ??
    (ownLimit(substance, ['Eye Irrit. 2']) && ownLimit(substance, corrosive))
  if (own) return specific(own)
  return hasClass(substance, damaging) ? generic(DAMAGING_PERCENT) : undefined
}

function irritantLimit(substance: Substance): Limit | undefined {
  const own = ownLimit(substance, ['Eye Irrit. 2'])
  if (own) return specific(own)
  if (hasClass(substance, damaging)) return generic(DAMAGING_AS_IRRITANT_PERCENT)
  return hasClass(substance, ['Eye Irrit. 2']) ? generic(IRRITANT_PERCENT) : undefined
}

const nonAdditive =
  (wanted: readonly ClassName[], percent: number) =>
  (substance: Substance): Limit | undefined =>
    isNonAdditive(substance) &&
    !ownLimit(substance, [...damaging, 'Eye Irrit. 2', 'Skin Irrit. 2']) &&
    hasClass(substance, wanted)
      ? generic(percent)
      : undefined
