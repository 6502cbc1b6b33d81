/** A certificate as its customer gets it: what was issued, with order, quantity and names. */

import { judgeForCustomer } from '../judge/customer-limits.ts'
import type { JudgedLot } from '../judge/types.ts'
import { worstOf } from '../quality/judge.ts'
import type { Producer, Shipment } from '../records/types.ts'
import { copyName } from '../register/copy-events.ts'
import { documentOf } from './frozen-schema.ts'
import type { Issued } from './issued.ts'
import type { Tongue } from './languages/tongue.ts'
import { customerFacts } from './packing-list.ts'
import { evidenceIn } from './papers.ts'
import { resultRow } from './result-row.ts'
import type { CustomerCopy, TableSection } from './shipment-types.ts'
import type { Answer, CertificateDocument, Fact, ResultRow } from './types.ts'
import { unparted, unstopped } from './words.ts'

type Part = Shipment['contents'][number]

export interface CopyInputs {
  readonly shipment: Shipment
  readonly part: Part
  readonly lot: JudgedLot
  /** The certificate that is copied, as it was issued. */
  readonly issued: Issued
  readonly producer: Pick<Producer, 'roles'>
  /** Of the certificate, with the records' texts. */
  readonly tongue: Tongue
}

/** The customer's copy of one lot's certificate. */
export function customerCopy(inputs: CopyInputs): CustomerCopy {
  const { shipment, part, lot, issued, tongue } = inputs
  const { number, revision } = issued.revision
  const of = { number, revision, shipment: shipment.number }
  const rule = part.decisionRule ?? lot.rule
  const rows = judgeForCustomer(lot, part).map(row => resultRow(row, rule, tongue))
  return {
    name: copyName({ ...of, copy: 1 }),
    of,
    document: copyOf(inputs, rows),
    ...(rows.length > 0
      ? { limits: limitSection(part, rows, tongue.lot.rules[rule], tongue) }
      : {}),
    fingerprint: issued.revision.data,
    data: evidenceIn(issued.frozen).data
  }
}

function copyOf(inputs: CopyInputs, rows: readonly ResultRow[]): CertificateDocument {
  const { shipment, issued, producer, tongue } = inputs
  const certificate = documentOf(issued.frozen.certificate)
  const name = producer.roles.find(({ role }) => tongue.own(role) === certificate.signatory)?.name
  return {
    ...certificate,
    facts: copyFacts(certificate.facts, inputs),
    answer: answerFor(certificate.answer, rows, tongue),
    ...(name === undefined ? {} : { signatory: `${name}, ${certificate.signatory}` }),
    statements: [tongue.copy.statement(shipment.number, shipment.sent), ...certificate.statements]
  }
}

/** The order takes the place of the word that it is named here. */
function copyFacts(facts: readonly Fact[], { shipment, part, tongue }: CopyInputs): Fact[] {
  const { copy: words, inspection } = tongue
  const [first, ...rest] = facts.filter(({ label }) => label !== inspection.order)
  const own = [
    ...(part.customerPart === undefined
      ? []
      : [{ label: words.part, text: unparted(part.customerPart) }]),
    { label: words.quantity, text: quantityText(part, tongue) }
  ]
  return [...(first ? [first] : []), ...customerFacts(shipment, tongue), ...own, ...rest]
}

/** '10.00 g in 2 containers: C-0701, C-0702'. */
function quantityText({ mass_g, containers = [] }: Part, { copy, numbers }: Tongue): string {
  const mass = numbers.number(mass_g.written)
  const names = containers.map(({ number }) => number).join(', ')
  return unparted(
    containers.length === 0 ? mass : copy.inContainers(mass, containers.length, names)
  )
}

const isMet = ({ verdict }: ResultRow) =>
  verdict?.word === 'pass' || verdict?.word === 'conditional pass'

/** The answer of the certificate, and whether the customer's own limits are met as well. */
function answerFor(answer: Answer, rows: readonly ResultRow[], { copy }: Tongue): Answer {
  if (rows.length === 0) return answer
  const missed = rows.filter(row => !isMet(row)).map(({ title }) => title)
  const sentence =
    missed.length === 0
      ? copy.meets(rows.length)
      : copy.misses(missed.length, rows.length, missed.join(', '))
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
  decisionRule: string,
  tongue: Tongue
): TableSection {
  const { copy: words, own } = tongue
  const { columns } = words
  return {
    heading: words.limits,
    table: {
      caption: words.limits,
      columns: [
        { title: columns.property, numeric: false },
        { title: columns.unit, numeric: false },
        { title: columns.result, numeric: true },
        { title: columns.uncertainty, numeric: true },
        { title: columns.limit, numeric: true },
        { title: columns.verdict, numeric: false }
      ],
      rows: rows.map(row => limitRow(row, tongue))
    },
    texts: [
      decisionRule,
      ...(accepted
        ? [words.accepted(accepted.by, accepted.on, unstopped(own(accepted.because)))]
        : [])
    ]
  }
}

/** The figure that is judged, where the limit holds for each sheet; else the result. */
function limitRow(row: ResultRow, { paper }: Tongue): string[] {
  const { title, unit, value, expandedUncertainty, decidedBy, limit, verdict } = row
  const judged = decidedBy ?? { value, expandedUncertainty }
  return [
    decidedBy ? `${title}, ${decidedBy.place}` : title,
    unit.printed || '–',
    judged.value?.printed ?? paper.bases['not measured'],
    judged.expandedUncertainty ? `± ${judged.expandedUncertainty.printed}` : '–',
    limit!.printed,
    paper.verdicts[verdict?.word ?? 'not judged']
  ]
}
