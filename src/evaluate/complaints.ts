/** Checks over what customers sent back, and over what was counted in stock. */

import { compareText, type FieldPath, type Problem, problemAt } from '../problem.ts'
import type { Complaint, Entry, Records } from '../records/types.ts'
import { allReturns, type Return, stockOf } from './uses.ts'

/** Every complaint with dates that cannot be, and every return of more than was sent. */
export const checkComplaints = (content: Records): Problem[] => [
  ...[...content.complaints.values()].flatMap(entry => checkDays(content, entry)),
  ...checkReturned(content)
]

/** A day in a complaint, and the one it cannot come before. */
interface Step {
  readonly field: FieldPath
  readonly what: string
  readonly on: string | undefined
  readonly after: string
  readonly since: string
}

function checkDays(content: Records, entry: Entry<Complaint>): Problem[] {
  const { shipment, received, told = [], returned = [], decision } = entry.record
  const sent = content.shipments.get(shipment)?.record.sent
  if (sent === undefined) return []
  const afterSending = { after: 'the goods were sent', since: sent }
  const steps: Step[] = [
    { field: ['received'], what: 'was received', on: received, ...afterSending },
    ...told.map(({ on }, index) => ({
      field: ['told', index, 'on'],
      what: 'was told',
      on,
      ...afterSending
    })),
    ...returned.flatMap((part, index) => [
      { field: ['returned', index, 'on'], what: 'came back', on: part.on, ...afterSending },
      {
        field: ['returned', index, 'decision', 'on'],
        what: 'was decided',
        on: part.decision?.on,
        after: 'the goods came back',
        since: part.on
      }
    ]),
    {
      field: ['decision', 'on'],
      what: 'was decided',
      on: decision?.on,
      after: 'the complaint was received',
      since: received
    }
  ]
  return steps.flatMap(step => outOfOrder(entry, step))
}

const outOfOrder = (entry: Entry<unknown>, { field, what, on, after, since }: Step): Problem[] =>
  on !== undefined && on < since
    ? [
        problemAt(
          entry.at(field),
          'DATE_ORDER',
          `${what} on ${on}, before ${after} on ${since}`,
          'check the two dates'
        )
      ]
    : []

/** Rounding of weighed amounts may add up to this part of what was sent. */
const SLACK = 1e-9

/** The return that goes beyond what was sent gets the problem: they count in the order of their days. */
function checkReturned(content: Records): Problem[] {
  const back = new Map<string, number>()
  return allReturns(content)
    .sort((a, b) => compareText(a.on, b.on))
    .flatMap(part => {
      const sent_g = sentOf(content, part)
      if (sent_g === undefined) return []
      const key = JSON.stringify([part.shipment, part.lot])
      const before = back.get(key) ?? 0
      back.set(key, before + part.mass_g)
      return before + part.mass_g > sent_g * (1 + SLACK) ? [overReturned(part, sent_g, before)] : []
    })
}

/** Mass of a lot in a shipment; undefined where it held none. */
function sentOf({ shipments }: Records, { shipment, lot }: Return): number | undefined {
  const parts = shipments.get(shipment)?.record.contents.filter(part => part.lot === lot) ?? []
  return parts.length > 0 ? parts.reduce((sum, { mass_g }) => sum + mass_g.value, 0) : undefined
}

function overReturned(part: Return, sent_g: number, before_g: number): Problem {
  const earlier = before_g > 0 ? `, of which ${grams(before_g)} came back earlier` : ''
  return problemAt(
    part.entry.at(part.field),
    'OVER_RETURNED',
    `${grams(part.mass_g)} of ${part.lot} came back, but shipment ${part.shipment} held ${grams(sent_g)}${earlier}`,
    'check the mass, and the shipment it came back from'
  )
}

const grams = (mass_g: number) => `${Number(mass_g.toPrecision(6))} g`

interface Counted {
  readonly lot: string
  readonly counted?: readonly { readonly on: string }[] | undefined
}

/** A lot cannot be counted before it was there. */
export function checkCounts(content: Records): Problem[] {
  const { materials, batches, expansions, foils } = content
  const entries: Entry<Counted>[] = [materials, batches, expansions, foils].flatMap(
    (map: ReadonlyMap<string, Entry<Counted>>) => [...map.values()]
  )
  return entries.flatMap(entry => {
    const { lot, counted = [] } = entry.record
    const since = stockOf(content, lot)?.since
    if (since === undefined) return []
    return counted.flatMap(({ on }, index) =>
      outOfOrder(entry, {
        field: ['counted', index, 'on'],
        what: 'was counted',
        on,
        after: 'the lot was there',
        since
      })
    )
  })
}
