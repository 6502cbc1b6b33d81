/** The packing list of a shipment: containers, masses, handling, carriage, safety data sheets. */

import { Decimal } from 'decimal.js'
import { grossOf } from '../evaluate/containers.ts'
import { placesOf } from '../metrology/rounding.ts'
import type { Shipment } from '../records/types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import type { PackingList, TableSection, TextSection } from './shipment-types.ts'
import type { Fact, ProducerText } from './types.ts'
import { unparted, withMinus } from './words.ts'

type Part = Shipment['contents'][number]
type Container = NonNullable<Part['containers']>[number]

export interface PackingInputs {
  readonly shipment: Shipment
  readonly producer: ProducerText
  readonly paper: 'A4' | 'Letter'
  /** What each lot is, by number: the grade's title, in the language. */
  readonly products: ReadonlyMap<string, string>
  /** Certificates that go with it, such as 'CT-26-022, revision 1, on lot FL-26-013.' */
  readonly certificates: readonly string[]
  /** Language of the list, and of what records say in it. */
  readonly tongue: Tongue
}

/** Build the packing list of a shipment whose containers are recorded. */
export function packingList(inputs: PackingInputs): PackingList {
  const { shipment, producer, paper, certificates, tongue } = inputs
  const { packing: words, language } = tongue
  return {
    title: words.title,
    number: shipment.number,
    dated: shipment.sent,
    language,
    paper,
    producer,
    facts: factsOf(shipment, tongue),
    containers: containerSection(inputs),
    sections: [
      { heading: words.handling, texts: handlingOf(shipment, tongue) },
      { heading: words.carriage, texts: carriageOf(shipment, tongue) },
      { heading: words.sheets, texts: sheetsOf(shipment, tongue) },
      { heading: words.certificates, texts: certificates }
    ]
  }
}

/** Masses as recorded add up to the last digit, and are told with as many. */
function total(decimals: readonly string[]): string {
  const places = Math.max(0, ...decimals.map(placesOf))
  const sum = decimals.reduce((all, one) => all.plus(one), new Decimal(0))
  return sum.toFixed(places)
}

const fact = (label: string, text: string | undefined): Fact[] =>
  text === undefined ? [] : [{ label, text: unparted(text) }]

/** Who gets how much, in what, under which numbers. */
export const customerFacts = (
  { number, customer, address, order }: Shipment,
  { copy: words }: Pick<Tongue, 'copy'> = english
): Fact[] => [
  ...fact(words.customer, customer),
  ...fact(words.address, address?.join(', ')),
  ...fact(words.order, order ?? words.noOrder),
  ...fact(words.shipment, number)
]

function factsOf(shipment: Shipment, tongue: Tongue): Fact[] {
  const { sent, contents, packing } = shipment
  const { numbers, own } = tongue
  const { facts } = tongue.packing
  const net = total(contents.map(({ mass_g }) => mass_g.decimal))
  return [
    ...customerFacts(shipment, tongue),
    ...fact(facts.sent, numbers.date(sent)),
    ...fact(facts.packages, packing && String(packing.packages)),
    ...fact(facts.net, numbers.number(`${net} g`)),
    ...fact(facts.gross, packing && numbers.number(packing.gross_g.written)),
    ...fact(facts.origin, packing && own(packing.origin)),
    ...fact(facts.tariff, packing?.tariffCode),
    ...fact(facts.emergency, packing?.emergencyTelephone)
  ]
}

const columnsIn = ({ packing: { columns } }: Tongue) => [
  { title: columns.container, numeric: false },
  { title: columns.kind, numeric: false },
  { title: columns.lot, numeric: false },
  { title: columns.product, numeric: false },
  { title: columns.tare, numeric: true },
  { title: columns.net, numeric: true },
  { title: columns.gross, numeric: true }
]

/** A gross mass with the digits of what it was made from. */
const grossText = (one: Container): string =>
  one.gross_g?.decimal ??
  grossOf(one).toFixed(placesOf(total([one.tare_g.decimal, one.net_g.decimal])))

function containerSection({ shipment, products, tongue }: PackingInputs): TableSection {
  const { packing: words, numbers } = tongue
  const all = shipment.contents.flatMap(({ lot, containers = [] }) =>
    containers.map(one => ({ lot, one }))
  )
  const masses = all.map(({ one }) => [one.tare_g.decimal, one.net_g.decimal, grossText(one)])
  const sums = [0, 1, 2].map(column => total(masses.map(row => row[column]!)))
  const rows = all.map(({ lot, one: { number, kind, pieces = 1 } }, index) => [
    number,
    words.kind(kind, pieces),
    lot,
    products.get(lot) ?? '',
    ...masses[index]!.map(numbers.number)
  ])
  return {
    heading: words.containers,
    texts: [words.grossNote],
    table: {
      caption: words.containers,
      columns: columnsIn(tongue),
      rows: [
        ...rows,
        [words.together, words.count(all.length), '', '', ...sums.map(numbers.number)]
      ]
    }
  }
}

function handlingOf({ packing }: Shipment, { packing: words, numbers }: Tongue): string[] {
  const below = packing?.storeBelow_C
  return [
    ...(packing?.keepDry ? [words.keepDry] : []),
    below
      ? words.storeBelow(numbers.number(withMinus(below.written)).replace(' ', '\u00a0'))
      : words.noTemperature
  ]
}

/** What an adviser found, as theirs; or that nobody did. Nothing is concluded from composition. */
function carriageOf({ transport }: Shipment, { packing: words, own }: Tongue): string[] {
  if (!transport) return [words.noDecision]
  const { as, by, basis, tests = [] } = transport
  return [
    words.decision({ ...transport, by: own(by), as: as === undefined ? undefined : own(as) }),
    words.basis(own(basis), tests.map(own)),
    words.decidedByAdviser
  ]
}

const sheetsOf = (
  { safetyDataSheets = [], sent }: Shipment,
  { packing: words, own }: Tongue
): TextSection['texts'] => {
  const given = safetyDataSheets.filter(one => one.sent <= sent)
  return given.length === 0
    ? [words.noSheet]
    : given.map(({ sheet, revision, language, sent: day }) =>
        words.sheet(sheet, revision, own(language), day)
      )
}
