/** Whether the records and the register still say what the customers' copies say. */

import type { JudgedLot } from '../judge/types.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { Content, Entry, Shipment } from '../records/types.ts'
import { copyName } from '../register/copy-events.ts'
import type { SentCopy } from '../register/copies.ts'
import { copyDrift } from './copies-to-send.ts'
import { customerCopy } from './customer-copy.ts'
import type { Issued, IssuedRegister } from './issued.ts'

/**
 * Hold the last copy for each shipment against its records, and name those whose certificate has
 * another revision since. What a withdrawn certificate means for who holds a copy the register tells.
 *
 * @param lots by their numbers
 */
export function checkCopies(
  content: Content,
  lots: ReadonlyMap<string, JudgedLot>,
  { issued, copies }: IssuedRegister
): Problem[] {
  const last = copies.chain.copies.filter(({ isReplaced }) => !isReplaced)
  return last.flatMap(sent => {
    const certificate = issued.find(({ revision }) => isCopyOf(sent, revision))
    const entry = content.shipments.get(sent.shipment)
    const lot = certificate && lots.get(certificate.revision.lot)
    const part = entry?.record.contents.find(one => one.lot === certificate?.revision.lot)
    if (!certificate || !lot) return []
    if (!entry || !part) return [goneFrom(content, entry, sent)]
    if (certificate.state === 'superseded')
      return last.some(one => isSentAfter(one, sent, issued)) ? [] : [superseded(entry, sent)]
    if (certificate.state !== 'current') return []
    const producer = content.producer.record
    const today = customerCopy({ shipment: entry.record, part, lot, issued: certificate, producer })
    const differs = copyDrift(today, copies)
    return differs === undefined ? [] : [differing(entry, sent, differs)]
  })
}

const isCopyOf = (sent: SentCopy, { number, revision }: Issued['revision']) =>
  sent.number === number && sent.revision === revision

/** Whether a copy of the revision that stands went to the same shipment. */
const isSentAfter = (one: SentCopy, before: SentCopy, issued: readonly Issued[]): boolean =>
  one.shipment === before.shipment &&
  one.number === before.number &&
  issued.some(({ state, revision }) => state !== 'superseded' && isCopyOf(one, revision))

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
