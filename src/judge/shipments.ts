/** Whether what was sent could be sent. */

import { type Problem, problemAt } from '../problem.ts'
import { decisionOn, isSellable } from '../quality/status.ts'
import type { Entry, Shipment } from '../records/types.ts'
import type { Decision, JudgedLot } from './types.ts'

/** Everything that speaks against the shipments recorded. */
export const checkShipments = (
  shipments: Iterable<Entry<Shipment>>,
  lots: ReadonlyMap<string, JudgedLot>
): Problem[] =>
  [...shipments].flatMap(entry =>
    entry.record.contents.flatMap(({ lot }, index) => {
      const decisions = lots.get(lot)?.evaluated.entry.record.status
      const reason = lots.has(lot) ? refusal(entry.record, decisions ?? []) : undefined
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

/** Why a lot could not go to a customer on the day; undefined where it could. */
function refusal({ sent, customer }: Shipment, decisions: readonly Decision[]): string | undefined {
  const decision = decisionOn(decisions, sent)
  const state = decision?.is ?? 'quarantine'
  if (!decision || !isSellable(state))
    return `was ${state === 'quarantine' ? 'in quarantine' : state} on ${sent}, when it was sent`
  if (state !== 'concession') return undefined
  if (decision.customer !== undefined && decision.customer !== customer)
    return `went to another customer than the one whose concession it has`
  return decision.until !== undefined && decision.until < sent
    ? `was sent on ${sent}, after its concession ended on ${decision.until}`
    : undefined
}
