/** Everything that goes with a shipment, or what is missing for it. */

import type { JudgedLot } from '../judge/types.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { Content, Shipment } from '../records/types.ts'
import { producerText } from './certificate.ts'
import { containerLabels } from './container-labels.ts'
import { type CopyInputs, customerCopy } from './customer-copy.ts'
import { rulesFor } from './label-wish.ts'
import { homeLanguage, tongueFor } from './languages/records.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { packingList } from './packing-list.ts'
import type { ShipmentPack } from './shipment-types.ts'

export interface PackInputs {
  readonly content: Content
  readonly lots: readonly JudgedLot[]
  readonly register: IssuedRegister
  readonly paper: 'A4' | 'Letter'
}

/** The pack of a shipment; or one sentence for each thing its records lack. */
export function shipmentPack(shipment: Shipment, inputs: PackInputs): ShipmentPack | string[] {
  const { content, lots, register } = inputs
  const producer = content.producer.record
  const rules = rulesFor({}, shipment.labels ?? producer.labels)
  const byNumber = new Map(lots.map(lot => [lot.evaluated.lot, lot]))
  const parts = shipment.contents.map(part => ({
    part,
    lot: byNumber.get(part.lot),
    issued: certificateFor(content, register, shipment, part.lot)
  }))
  const ready = parts.flatMap(({ part, lot, issued }) =>
    lot && issued ? [{ part, lot, issued }] : []
  )
  const labelled = ready.map(({ lot, part }) =>
    containerLabels(content, lot, register.issued, part, rules)
  )
  const made = ready.map(one => copyIn(content, shipment, one))
  const list = listIn(shipment, ready, inputs)
  const missing = [
    ...missingPacking(shipment),
    ...twiceIn(shipment),
    ...labelled.flatMap(one => one.missing),
    ...parts.flatMap(({ part, issued }) =>
      issued ? [] : [`${part.lot} has no certificate that stands: npm run issue -- ${part.lot}`]
    ),
    ...made.flatMap(one => one.missing),
    ...list.missing
  ]
  if (missing.length > 0 || ready.length < parts.length) return missing
  return {
    packingList: list.list,
    labels: new Map(labelled.flatMap(({ labels }) => [...labels])),
    copies: made.map(({ copy }) => copy)
  }
}

type Ready = Pick<CopyInputs, 'part' | 'lot' | 'issued'>

/** A copy in the language of its certificate, and which of the records' texts that lacks. */
function copyIn(content: Content, shipment: Shipment, one: Ready) {
  const { tongue, missing } = listening(content, one.issued.frozen.certificate.language)
  const copy = customerCopy({ ...one, shipment, producer: content.producer.record, tongue })
  return { copy, missing: missing(copy.name) }
}

/** The packing list in the language of the shipment, and which of the records' texts that lacks. */
function listIn(shipment: Shipment, ready: readonly Ready[], { content, paper }: PackInputs) {
  const { tongue, missing } = listening(content, shipment.language ?? homeLanguage(content))
  const list = packingList({
    shipment,
    producer: producerText(content.producer.record),
    paper,
    products: new Map(ready.map(({ part, lot }) => [part.lot, tongue.own(lot.grade.title)])),
    certificates: ready.map(({ issued: { revision: one } }) =>
      tongue.packing.certificate(one.number, one.revision, one.lot)
    ),
    tongue
  })
  return { list, missing: missing('the packing list') }
}

/** A language, and what it was found to lack once something was worded in it. */
function listening(content: Content, language: PaperLanguage) {
  const lacking = new Set<string>()
  const tongue = tongueFor(content, language, ({ text }) => lacking.add(text))
  const missing = (paper: string) =>
    [...lacking].map(
      text =>
        `${paper} has no text in '${language}' for '${text}': add it to translations/${language}.yaml`
    )
  return { tongue, missing }
}

/** A copy is for all that was sent of a lot. */
const twiceIn = ({ number, contents }: Shipment): string[] => {
  const lots = contents.map(({ lot }) => lot)
  const again = lots.filter((lot, index) => lots.indexOf(lot) < index)
  return [...new Set(again)].map(
    lot => `shipment ${number} has ${lot} in more than one line: put its containers into one`
  )
}

function missingPacking({ number, contents, packing }: Shipment): string[] {
  const loose = contents.filter(({ containers }) => !containers).map(({ lot }) => lot)
  return [
    ...(packing ? [] : [`shipment ${number} does not say how it is packed: add 'packing:'`]),
    ...loose.map(lot => `${lot} is in no container: add 'containers:' to its line`)
  ]
}

/**
 * The certificate on a lot that stands: the one ordered for this shipment, or the latest that was
 * ordered for none. One that was ordered for another shipment declares compliance with another order.
 */
function certificateFor(
  { certificates }: Content,
  { issued }: IssuedRegister,
  { number }: Shipment,
  lot: string
): Issued | undefined {
  const orderedFor = ({ revision }: Issued) =>
    certificates.find(
      ({ record }) => record.number === revision.number && record.revision === revision.revision
    )?.record.shipment
  const standing = issued.filter(
    ({ state, revision }) => state === 'current' && revision.lot === lot
  )
  return (
    standing.findLast(one => orderedFor(one) === number) ??
    standing.findLast(one => orderedFor(one) === undefined)
  )
}
