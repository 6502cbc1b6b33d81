/** Whether the records and the register still say what the customers' copies say. */

import type { JudgedLot } from '../judge/types.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { Content, Entry, Shipment } from '../records/types.ts'
import { documentName } from '../register/compare.ts'
import { copyName } from '../register/copy-events.ts'
import type { SentCopy } from '../register/copies.ts'
import { copyDrift } from './copies-to-send.ts'
import { customerCopy } from './customer-copy.ts'
import { tongueFor } from './languages/records.ts'
import type { IssuedRegister } from './issued.ts'

/**
 * Hold the last copy for each shipment against its records, and name those whose certificate has
 * another revision since. What a withdrawn certificate means for who holds a copy the register tells.
 *
 * @param lots by their numbers
 * @param asOf copies sent later are left alone
 */
export function checkCopies(
  content: Content,
  lots: ReadonlyMap<string, JudgedLot>,
  { issued, copies }: IssuedRegister,
  asOf: string
): Problem[] {
  const certificates = new Map(issued.map(one => [documentName(one.revision), one]))
  const last = copies.kept.filter(({ sent }) => !sent.isReplaced && sent.date <= asOf)
  const stateOf = (sent: SentCopy) => certificates.get(documentName(sent))?.state
  // Shipments that have a copy of the revision that stands, by certificate.
  const upToDate = new Set(
    last.filter(({ sent }) => stateOf(sent) !== 'superseded').map(({ sent }) => needOf(sent))
  )
  return last.flatMap(kept => {
    const { sent } = kept
    const certificate = certificates.get(documentName(sent))
    const entry = content.shipments.get(sent.shipment)
    const lot = certificate && lots.get(certificate.revision.lot)
    const part = entry?.record.contents.find(one => one.lot === certificate?.revision.lot)
    if (!certificate || !lot) return []
    if (!entry || !part) return [goneFrom(content, entry, sent)]
    if (certificate.state === 'superseded')
      return upToDate.has(needOf(sent)) ? [] : [superseded(entry, sent)]
    if (certificate.state !== 'current') return []
    const producer = content.producer.record
    const tongue = tongueFor(content, certificate.frozen.certificate.language)
    const inputs = { shipment: entry.record, part, lot, issued: certificate, producer, tongue }
    const today = customerCopy(inputs)
    const differs = copyDrift(today, kept)
    return differs === undefined ? [] : [differing(entry, sent, differs)]
  })
}

const needOf = ({ number, shipment }: SentCopy) => `${number} ${shipment}`

const differing = (entry: Entry<Shipment>, { shipment }: SentCopy, sentence: string): Problem =>
  problemAt(
    entry.at(['number']),
    'COPY_DIFFERS',
    sentence.replace(/\.$/u, ''),
    `put the records back as they were, or send another in its place that says why: npm run ship -- ${shipment} --reason "..."`
  )

const superseded = (entry: Entry<Shipment>, sent: SentCopy): Problem =>
  problemAt(
    entry.at(['number']),
    'COPY_SUPERSEDED',
    `${copyName(sent)} was sent on ${sent.date}, and ${sent.number} has a later revision since: the customer holds the old one`,
    `send a copy of the revision that stands: npm run ship -- ${sent.shipment}`
  )

function goneFrom(content: Content, entry: Entry<Shipment> | undefined, sent: SentCopy): Problem {
  const lost = entry ? 'no longer have its lot in that shipment' : 'have that shipment no more'
  return problemAt(
    entry ? entry.at(['contents']) : content.producer.at(['name']),
    'COPY_DIFFERS',
    `${copyName(sent)} was sent on ${sent.date}, and the records ${lost}`,
    'put the record back: what was sent stays answerable'
  )
}
