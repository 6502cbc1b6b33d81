/**
 * Whether a certificate may carry the type of EN 10204 it is ordered as.
 *
 * Source: EN 10204:2004, the table of types and the definitions of specific and non-specific
 * inspection; from memory, not checked against the print.
 */

import { type Problem, problemAt } from '../problem.ts'
import { decisionOn } from '../quality/status.ts'
import type { InspectionType } from '../records/schemas/lots.ts'
import type { CertificateOrder, Entry, Producer, Records } from '../records/types.ts'
import type { JudgedLot } from './types.ts'

/** What each type is called. */
export const inspectionNames: Record<InspectionType, string> = {
  '2.1': 'declaration of compliance 2.1',
  '2.2': 'test report 2.2',
  '3.1': 'inspection certificate 3.1'
}

/** Whether a type shows results of tests on the lot itself. */
export const givesOwnResults = (type: InspectionType | undefined): boolean =>
  type === undefined || type === '3.1'

const ANALYSIS =
  "leave 'type' out for a certificate of analysis, which gives the results and names no type of EN 10204"

/** Why an order of a type cannot be met, and what is offered instead. */
interface Refusal {
  readonly field: 'type' | 'shipment' | 'signatory'
  readonly why: string
  readonly instead: string
}

/** Everything that speaks against the type of a certificate. */
export function checkInspection(
  records: Records,
  entry: Entry<CertificateOrder>,
  lot: JudgedLot
): Problem[] {
  const { type, number } = entry.record
  if (type === undefined) return []
  const refusals = [
    ...againstOrder(records, entry.record),
    ...againstState(entry.record, lot),
    ...(type === '2.2' ? againstReport(lot) : []),
    ...(type === '3.1' ? againstInspection(records.producer?.record, entry.record, lot) : [])
  ]
  return refusals.map(({ field, why, instead }) =>
    problemAt(
      entry.at([field]),
      'NOT_CERTIFIABLE',
      `certificate ${number} cannot be ${article(type)} ${inspectionNames[type]}: ${why}`,
      instead
    )
  )
}

const article = (type: InspectionType) => (type === '3.1' ? 'an' : 'a')

/** Each type declares compliance with an order: one has to be named. */
function againstOrder({ shipments }: Records, { shipment, lot }: CertificateOrder): Refusal[] {
  const why = 'it declares compliance with an order, and none is named'
  if (shipment === undefined)
    return [{ field: 'type', why, instead: `name the shipment under 'shipment:', or ${ANALYSIS}` }]
  const sent = shipments.get(shipment)
  const accepted = sent?.record.contents.some(part => part.lot === lot && part.accepted)
  if (accepted)
    return [
      {
        field: 'shipment',
        why: `the customer takes ${lot} though it misses a limit of the order`,
        instead: ANALYSIS
      }
    ]
  return sent && sent.record.order === undefined
    ? [
        {
          field: 'shipment',
          why: `it declares compliance with an order, and shipment ${shipment} names none`,
          instead: `add 'order:' to the shipment, or ${ANALYSIS}`
        }
      ]
    : []
}

/** What was let go under concession does not comply, though a customer takes it. */
function againstState({ issued, lot: name }: CertificateOrder, { evaluated }: JudgedLot) {
  const decision = decisionOn(evaluated.entry.record.status ?? [], issued)
  const refusal: Refusal = {
    field: 'type',
    why: `${name} was let go under concession, so it does not meet all that was ordered`,
    instead: ANALYSIS
  }
  return decision?.is === 'concession' ? [refusal] : []
}

/** Results of non-specific inspection are the grade's typical figures, never the lot's own. */
const againstReport = ({ grade }: JudgedLot): Refusal[] =>
  grade.typical
    ? []
    : [
        {
          field: 'type',
          why: `it gives results of non-specific inspection, and grade ${grade.id} states no typical figures`,
          instead: `results of tests on the lot itself are specific: order an inspection certificate 3.1, or ${ANALYSIS}`
        }
      ]

function againstInspection(
  producer: Producer | undefined,
  { signatory, lot: name }: CertificateOrder,
  { evaluated, rows }: JudgedLot
): Refusal[] {
  const roles = producer?.roles ?? []
  const role = roles.find(one => one.role === signatory)
  const free = roles.filter(one => one.independentOfManufacturing).map(one => one.role)
  return [
    ...(role && !role.independentOfManufacturing ? [dependent(signatory, free)] : []),
    ...(role && role.name === evaluated.entry.record.by
      ? [
          {
            field: 'signatory' as const,
            why: `whoever made ${name} cannot also be its inspection representative`,
            instead: `let somebody else sign, or ${ANALYSIS}`
          }
        ]
      : []),
    ...(rows.some(({ result }) => result)
      ? []
      : [
          {
            field: 'type' as const,
            why: `it gives results of tests on the lot itself, and ${name} has none`,
            instead: 'test the lot, or order a declaration of compliance 2.1'
          }
        ])
  ]
}

/** @param free roles that could sign */
const dependent = (signatory: string, free: readonly string[]): Refusal => ({
  field: 'signatory',
  why: `it needs an inspection representative independent of the manufacturing department, and the ${signatory} is none${free.length === 0 ? ', nor is any other role of the producer' : ''}`,
  instead: free.length === 0 ? ANALYSIS : `let the ${free.join(' or the ')} sign, or ${ANALYSIS}`
})
