/** A certificate as its customer gets it: what was issued, with order, quantity and names. */

import { judgeForCustomer } from '../judge/customer-limits.ts'
import type { JudgedLot } from '../judge/types.ts'
import { worstOf } from '../quality/judge.ts'
import type { Producer, Shipment } from '../records/types.ts'
import { copyName } from '../register/copy-events.ts'
import { documentOf } from './frozen-schema.ts'
import type { Issued } from './issued.ts'
import { customerFacts } from './packing-list.ts'
import { evidenceIn } from './papers.ts'
import { resultRow } from './result-row.ts'
import type { CustomerCopy, TableSection } from './shipment-types.ts'
import type { Answer, CertificateDocument, Fact, ResultRow } from './types.ts'
import { counted, dateText, ruleTexts, unparted } from './words.ts'

type Part = Shipment['contents'][number]

export interface CopyInputs {
  readonly shipment: Shipment
  readonly part: Part
  readonly lot: JudgedLot
  /** The certificate that is copied, as it was issued. */
  readonly issued: Issued
  readonly producer: Pick<Producer, 'roles'>
}

/** The customer's copy of one lot's certificate. */
export function customerCopy(inputs: CopyInputs): CustomerCopy {
  const { shipment, part, lot, issued } = inputs
  const { number, revision } = issued.revision
  const of = { number, revision, shipment: shipment.number }
  const rule = part.decisionRule ?? lot.rule
  const rows = judgeForCustomer(lot, part).map(row => resultRow(row, rule))
  return {
    name: copyName({ ...of, copy: 1 }),
    of,
    document: copyOf(inputs, rows),
    ...(rows.length > 0 ? { limits: limitSection(part, rows, ruleTexts[rule]) } : {}),
    fingerprint: issued.revision.data,
    data: evidenceIn(issued.frozen).data
  }
}

function copyOf(inputs: CopyInputs, rows: readonly ResultRow[]): CertificateDocument {
  const { shipment, part, issued, producer } = inputs
  const certificate = documentOf(issued.frozen.certificate)
  const name = producer.roles.find(({ role }) => role === certificate.signatory)?.name
  return {
    ...certificate,
    facts: copyFacts(certificate.facts, shipment, part),
    answer: answerFor(certificate.answer, rows),
    ...(name === undefined ? {} : { signatory: `${name}, ${certificate.signatory}` }),
    statements: [
      `Customer’s copy for shipment ${shipment.number} of ${dateText(shipment.sent)}: the certificate of the same number, with customer, order, quantity and the name of who signed. Its results are those that were issued.`,
      ...certificate.statements
    ]
  }
}

/** The order takes the place of the word that it is named here. */
function copyFacts(facts: readonly Fact[], shipment: Shipment, part: Part): Fact[] {
  const [first, ...rest] = facts.filter(({ label }) => label !== 'Order')
  const own = [
    ...(part.customerPart === undefined
      ? []
      : [{ label: 'Your part', text: unparted(part.customerPart) }]),
    { label: 'Quantity', text: quantityText(part) }
  ]
  return [...(first ? [first] : []), ...customerFacts(shipment), ...own, ...rest]
}

/** '10.00 g in 2 containers: C-0701, C-0702'. */
function quantityText({ mass_g, containers = [] }: Part): string {
  const numbers = containers.map(({ number }) => number).join(', ')
  const within =
    containers.length === 0 ? '' : ` in ${counted(containers.length, 'container')}: ${numbers}`
  return unparted(`${mass_g.written}${within}`)
}

const isMet = ({ verdict }: ResultRow) =>
  verdict?.word === 'pass' || verdict?.word === 'conditional pass'

/** The answer of the certificate, and whether the customer's own limits are met as well. */
function answerFor(answer: Answer, rows: readonly ResultRow[]): Answer {
  if (rows.length === 0) return answer
  const missed = rows.filter(row => !isMet(row)).map(({ title }) => title)
  const all = rows.length === 1 ? 'the limit' : `all ${rows.length} limits`
  const sentence =
    missed.length === 0
      ? `Meets ${all} of the customer.`
      : `Does not meet ${missed.length} of ${counted(rows.length, 'limit')} of the customer: ${missed.join(', ')}.`
  const { word } = answer
  const verdicts = rows.flatMap(({ verdict }) => verdict?.word ?? [])
  return {
    word: word === 'not judged' || word === 'not published' ? word : worstOf([word, ...verdicts]),
    sentence: `${answer.sentence} ${sentence}`
  }
}

function limitSection(
  { accepted }: Part,
  rows: readonly ResultRow[],
  decisionRule: string
): TableSection {
  return {
    heading: 'Customer’s limits',
    table: {
      caption: 'Customer’s limits',
      columns: [
        { title: 'Property', numeric: false },
        { title: 'Unit', numeric: false },
        { title: 'Result', numeric: true },
        { title: 'U', numeric: true },
        { title: 'Limit', numeric: true },
        { title: 'Verdict', numeric: false }
      ],
      rows: rows.map(limitRow)
    },
    texts: [
      decisionRule,
      ...(accepted
        ? [
            `Taken by the customer all the same: ${accepted.by}, ${dateText(accepted.on)}: ${accepted.because.replace(/\.$/u, '')}.`
          ]
        : [])
    ]
  }
}

/** The figure that is judged, where the limit holds for each sheet; else the result. */
function limitRow(row: ResultRow): string[] {
  const { title, unit, value, expandedUncertainty, decidedBy, limit, verdict } = row
  const judged = decidedBy ?? { value, expandedUncertainty }
  return [
    decidedBy ? `${title}, ${decidedBy.place}` : title,
    unit.printed || '–',
    judged.value?.printed ?? 'not measured',
    judged.expandedUncertainty ? `± ${judged.expandedUncertainty.printed}` : '–',
    limit!.printed,
    verdict?.word ?? 'not judged'
  ]
}
