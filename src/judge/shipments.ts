/** Whether what was sent could be sent. */

import { type Problem, problemAt } from '../problem.ts'
import { decisionOn, isSellable } from '../quality/status.ts'
import type { Entry, Records, Shipment } from '../records/types.ts'
import { checkCustomerLimits } from './customer-limits.ts'
import { checkOwed, checkSentSheets, checkSheets } from './data-sheets.ts'
import { gradeOf } from './judge-lot.ts'
import { ageingOf, retestDate } from './retest.ts'
import type { Decision, JudgedLot } from './types.ts'

/** Everything that speaks against the shipments recorded. */
export function checkShipments(
  records: Records,
  lots: ReadonlyMap<string, JudgedLot>,
  asOf: string
): Problem[] {
  const entries = [...records.shipments.values()]
  const all = entries.map(({ record }) => record)
  return [
    ...entries.flatMap(entry => [
      ...entry.record.contents.flatMap(({ lot }, index) => {
        const judged = lots.get(lot)
        return judged ? checkPart(records, entry, index, judged, all) : []
      }),
      ...checkSentSheets(records, entry),
      ...checkTransport(entry)
    ]),
    ...checkOwed(records, lots, asOf)
  ]
}

/** Everything against one line of a shipment. */
function checkPart(
  records: Records,
  entry: Entry<Shipment>,
  index: number,
  lot: JudgedLot,
  all: readonly Shipment[]
): Problem[] {
  const { record } = lot.evaluated.entry
  const name = entry.record.contents[index]!.lot
  const refused = (reason: string, hint: string) =>
    problemAt(entry.at(['contents', index, 'lot']), 'NOT_SHIPPABLE', `${name} ${reason}`, hint)
  const reason = refusal(name, entry.record, all, record.status ?? [])
  const { sent } = entry.record
  const grade = gradeOf(records, record, sent)
  const retest = retestDate(grade, record, sent)
  const again = ageingOf(grade).join(', ')
  return [
    ...(reason === undefined ? [] : [refused(reason, SENDABLE)]),
    ...(retest && retest.due < sent
      ? [
          refused(
            `was sent on ${sent}, after it had to be tested again by ${retest.due}${retest.because === undefined ? '' : `: ${retest.because}`}`,
            `repeat ${again} and record them under 'retested:' of the lot`
          )
        ]
      : []),
    ...checkCustomerLimits(entry, index, lot),
    ...checkSheets(records, entry, index, lot)
  ]
}

const SENDABLE = 'only what is released, or accepted by this customer under concession, is sent'

/** A decision on carriage holds from its day to its end. */
function checkTransport(entry: Entry<Shipment>): Problem[] {
  const { transport, sent } = entry.record
  if (!transport || (transport.on <= sent && sent <= transport.until)) return []
  const { on, until } = transport
  return [
    problemAt(
      entry.at(['transport', until < sent ? 'until' : 'on']),
      'NOT_SHIPPABLE',
      until < sent
        ? `the decision on carriage ended on ${until}, before the goods were sent on ${sent}`
        : `the decision on carriage was taken on ${on}, after the goods were sent on ${sent}`,
      'have the adviser renew it, or take it out: the papers then say that there is none'
    )
  ]
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
