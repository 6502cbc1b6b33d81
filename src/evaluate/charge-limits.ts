/**
 * A charge against the producer's own documented limit for the vessel it is made in.
 *
 * A limit binds plans and release, never the record: what was run above it is recorded, told, and held
 * until someone who may has reviewed it. Nothing here calls a charge safe.
 */

import { type Problem, problemAt } from '../problem.ts'
import { plainMass } from './charged.ts'
import type { Batch, Entry, Producer, Records } from '../records/types.ts'

export type ChargeLimit = NonNullable<Producer['chargeLimits']>[number]

/** Masses of a charge by what they are for, g. */
export type ChargeMasses = Readonly<Record<LimitedPart, number>>

const limitedParts = ['graphite', 'acid', 'oxidiser', 'total'] as const
export type LimitedPart = (typeof limitedParts)[number]

const limitOf = (limit: ChargeLimit, part: LimitedPart) =>
  ({
    graphite: limit.graphite_g,
    acid: limit.acid_g,
    oxidiser: limit.oxidiser_g,
    total: limit.total_g
  })[part]

/** The limit of a vessel in force on a day; the latest where one followed another. */
export const chargeLimitOn = (
  producer: Producer | undefined,
  vessel: string,
  day: string
): ChargeLimit | undefined =>
  [...(producer?.chargeLimits ?? [])]
    .sort((a, b) => (a.since < b.since ? -1 : 1))
    .findLast(limit => limit.vessel === vessel && limit.since <= day && day <= (limit.until ?? day))

/** Lines of a charge, recorded or planned. */
interface Charged {
  readonly charge?:
    readonly { readonly as: string; readonly mass_g: { readonly value: number } }[] | undefined
}

/** What reacts: graphite, acid and oxidiser. Water and neutraliser come after. */
export function massesOf({ charge = [] }: Charged): ChargeMasses {
  const of = (role: string) =>
    charge.filter(line => line.as === role).reduce((sum, { mass_g }) => sum + mass_g.value, 0)
  const [graphite, acid, oxidiser] = [of('graphite'), of('acid'), of('oxidiser')]
  return { graphite, acid, oxidiser, total: graphite + acid + oxidiser }
}

/** One part of a charge above its limit. */
export interface Exceedance {
  readonly part: LimitedPart
  /** 'graphite 120.02 g, above 110 g' */
  readonly text: string
}

/** Every part of a charge above a limit. Masses that differ in the last digit of a float are equal. */
export const exceeded = (masses: ChargeMasses, limit: ChargeLimit): Exceedance[] =>
  limitedParts.flatMap(part => {
    const most = limitOf(limit, part)
    return most && masses[part] > most.value * (1 + 1e-9)
      ? [
          {
            part,
            text: `${part} ${Number(masses[part].toPrecision(6))} g, above ${most.written}`
          }
        ]
      : []
  })

/** A batch above its vessel's limit. */
export interface OverLimit {
  readonly limit: ChargeLimit
  readonly exceeded: readonly Exceedance[]
}

/** The charge with the masses of what was measured out. */
const withMasses = (content: Records, { charge = [] }: Batch): Charged => ({
  charge: charge.map(line => ({ as: line.as, mass_g: plainMass(content, line) }))
})

export function overLimit(content: Records, batch: Batch): OverLimit | undefined {
  const { vessel, made } = batch
  const limit =
    vessel === undefined ? undefined : chargeLimitOn(content.producer?.record, vessel, made)
  const found = limit ? exceeded(massesOf(withMasses(content, batch)), limit) : []
  return limit && found.length > 0 ? { limit, exceeded: found } : undefined
}

/** 'graphite 120.02 g, above 110 g, the documented limit of vessel V-1 (RA-26-01)'. */
export const overLimitText = ({ limit, exceeded }: OverLimit): string =>
  `${exceeded.map(({ text }) => text).join('; ')}: the documented limit of vessel ${limit.vessel} (${limit.assessment})`

/** A batch that ran above its limit unreviewed, or in a vessel nobody named although limits were in force. */
export function doubtCharge(content: Records, entry: Entry<Batch>): Problem[] {
  const { record } = entry
  const over = overLimit(content, record)
  if (over)
    return record.overLimit
      ? []
      : [
          problemAt(
            entry.at(['charge']),
            'CHARGE_LIMIT',
            `was charged with ${overLimitText(over)}; the lot is held`,
            "it stays recorded as it was; a role reviews it under 'over-limit: { by, on, because }' before it can be let go"
          )
        ]
  const limits = content.producer?.record.chargeLimits ?? []
  const inForce = limits.some(
    ({ since, until }) => since <= record.made && record.made <= (until ?? record.made)
  )
  const reacted = (record.charge ?? []).some(line => line.as === 'oxidiser')
  if (!inForce || !reacted) return []
  const { vessel, made } = record
  if (vessel !== undefined && chargeLimitOn(content.producer?.record, vessel, made)) return []
  return [
    problemAt(
      vessel === undefined ? entry.at([]) : entry.at(['vessel']),
      'CHARGE_LIMIT',
      vessel === undefined
        ? 'does not name the vessel it was made in, so that its charge cannot be held against a documented limit'
        : `vessel ${vessel} has no documented limit in force on ${made}`,
      "name the vessel, and state its limit with the assessment it rests on under 'charge-limits' in producer.yaml"
    )
  ]
}
