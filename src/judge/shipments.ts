/** Whether what was sent could be sent. */

import { type Problem, problemAt } from '../problem.ts'
import { decisionOn, isSellable } from '../quality/status.ts'
import type { Entry, Shipment } from '../records/types.ts'
import type { Decision, JudgedLot } from './types.ts'

/** Everything that speaks against the shipments recorded. */
export function checkShipments(
  shipments: Iterable<Entry<Shipment>>,
  lots: ReadonlyMap<string, JudgedLot>
): Problem[] {
  const entries = [...shipments]
  const all = entries.map(({ record }) => record)
  return entries.flatMap(entry =>
    entry.record.contents.flatMap(({ lot }, index) => {
      const decisions = lots.get(lot)?.evaluated.entry.record.status
      const reason = lots.has(lot) ? refusal(lot, entry.record, all, decisions ?? []) : undefined
      return reason === undefined
        ? []
        : [
            problemAt(
              entry.at(['contents', index, 'lot']),
              'NOT_SHIPPABLE',
              `${lot} ${reason}`,
              'only what is released, or accepted by this customer under concession, is sent'
            )
          ]
    })
  )
}

/** Why a lot could not go to a customer on the day; undefined where it could. */
function refusal(
  lot: string,
  shipment: Shipment,
  all: readonly Shipment[],
  decisions: readonly Decision[]
): string | undefined {
  const { sent, customer } = shipment
  const decision = decisionOn(decisions, sent)
  const state = decision?.is ?? 'quarantine'
  if (!decision || !isSellable(state))
    return `was ${state === 'quarantine' ? 'in quarantine' : state} on ${sent}, when it was sent`
  if (state !== 'concession') return undefined
  if (decision.customer !== undefined && decision.customer !== customer)
    return 'went to another customer than the one whose concession it has'
  if (decision.until !== undefined && decision.until < sent)
    return `was sent on ${sent}, after its concession ended on ${decision.until}`
  const mass_g = sentSince(lot, decision.on, shipment, all)
  return decision.quantity_g && mass_g > decision.quantity_g.value
    ? `was sent beyond its concession: ${Number(mass_g.toPrecision(6))} g of ${decision.quantity_g.written}`
    : undefined
}

/** Mass of a lot sent from a day on, up to and with a shipment. */
const sentSince = (lot: string, since: string, last: Shipment, all: readonly Shipment[]): number =>
  all
    .filter(({ sent }) => sent >= since)
    .filter(({ sent, number }) => sent < last.sent || (sent === last.sent && number <= last.number))
    .flatMap(({ contents }) => contents)
    .filter(part => part.lot === lot)
    .reduce((sum, { mass_g }) => sum + mass_g.value, 0)
