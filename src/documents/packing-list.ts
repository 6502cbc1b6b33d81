/** The packing list of a shipment: containers, masses, handling, carriage, safety data sheets. */

import { Decimal } from 'decimal.js'
import { grossOf } from '../evaluate/containers.ts'
import { placesOf } from '../metrology/rounding.ts'
import type { Shipment } from '../records/types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import type { PackingList, TableSection, TextSection } from './shipment-types.ts'
import type { Fact, ProducerText } from './types.ts'
import { counted, dateText, unparted, withMinus } from './words.ts'

type Part = Shipment['contents'][number]
type Container = NonNullable<Part['containers']>[number]

export interface PackingInputs {
  readonly shipment: Shipment
  readonly producer: ProducerText
  readonly paper: 'A4' | 'Letter'
  /** What each lot is, by number: the grade's title. */
  readonly products: ReadonlyMap<string, string>
  /** Certificates that go with it, such as 'CT-26-022, revision 1'. */
  readonly certificates: readonly string[]
}

/** Build the packing list of a shipment whose containers are recorded. */
export function packingList(inputs: PackingInputs): PackingList {
  const { shipment, producer, paper, certificates } = inputs
  return {
    title: 'Packing list',
    number: shipment.number,
    dated: shipment.sent,
    language: 'en',
    paper,
    producer,
    facts: factsOf(shipment),
    containers: containerSection(inputs),
    sections: [
      { heading: 'Handling', texts: handlingOf(shipment) },
      { heading: 'Carriage', texts: carriageOf(shipment) },
      { heading: 'Safety data sheets', texts: sheetsOf(shipment) },
      { heading: 'Certificates', texts: certificates }
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

function factsOf(shipment: Shipment): Fact[] {
  const { sent, contents, packing } = shipment
  const net = total(contents.map(({ mass_g }) => mass_g.decimal))
  return [
    ...customerFacts(shipment),
    ...fact('Sent', dateText(sent)),
    ...fact('Packages', packing && String(packing.packages)),
    ...fact('Net mass', `${net} g`),
    ...fact('Gross mass', packing?.gross_g.written),
    ...fact('Origin', packing?.origin),
    ...fact('Tariff code', packing?.tariffCode),
    ...fact('Emergency', packing?.emergencyTelephone)
  ]
}

const columns = [
  { title: 'Container', numeric: false },
  { title: 'Kind', numeric: false },
  { title: 'Lot', numeric: false },
  { title: 'Product', numeric: false },
  { title: 'Tare, g', numeric: true },
  { title: 'Net, g', numeric: true },
  { title: 'Gross, g', numeric: true }
]

/** A gross mass with the digits of what it was made from. */
const grossText = (one: Container): string =>
  one.gross_g?.decimal ??
  grossOf(one).toFixed(placesOf(total([one.tare_g.decimal, one.net_g.decimal])))

function containerSection({ shipment, products }: PackingInputs): TableSection {
  const all = shipment.contents.flatMap(({ lot, containers = [] }) =>
    containers.map(one => ({ lot, one }))
  )
  const sums = [
    all.map(({ one }) => one.tare_g.decimal),
    all.map(({ one }) => one.net_g.decimal),
    all.map(({ one }) => grossText(one))
  ].map(total)
  const rows = all.map(({ lot, one }) => [
    one.number,
    kindText(one),
    lot,
    products.get(lot) ?? '',
    one.tare_g.decimal,
    one.net_g.decimal,
    grossText(one)
  ])
  return {
    heading: 'Containers',
    texts: ['Gross is tare and net together where it was not weighed by itself.'],
    table: {
      caption: 'Containers',
      columns,
      rows: [...rows, ['Together', counted(all.length, 'container'), '', '', ...sums]]
    }
  }
}

const kindText = ({ kind, pieces }: Container): string =>
  pieces === undefined || pieces === 1 ? kind : `${kind}, ${pieces} pieces`

function handlingOf({ packing }: Shipment): string[] {
  const below = packing?.storeBelow_C
  return [
    ...(packing?.keepDry ? ['Keep dry.'] : []),
    below
      ? `Store below ${withMinus(below.written).replace(' ', '\u00a0')}.`
      : 'No maximum storage temperature is stated.'
  ]
}

/** What an adviser found, as theirs; or that nobody did. Nothing is concluded from composition. */
export function carriageOf({ transport }: Shipment): string[] {
  if (!transport)
    return [
      'No decision on carriage by a safety adviser is on record for this shipment. Nothing in these papers says whether the goods are dangerous goods.'
    ]
  const { is, as, by, on, until, basis, tests = [] } = transport
  const carried = as === undefined ? '' : `, carried as ${as}`
  return [
    `${is === 'dangerous goods' ? 'Dangerous goods' : 'Not dangerous goods'}${carried}: decided by ${by} on ${dateText(on)}, valid until ${dateText(until)}.`,
    `Basis: ${[basis, ...(tests.length > 0 ? [`tests: ${tests.join(', ')}`] : [])].join('; ')}.`,
    'The decision is the adviser’s; the producer reports it.'
  ]
}

const sheetsOf = ({ safetyDataSheets = [], sent }: Shipment): TextSection['texts'] => {
  const given = safetyDataSheets.filter(one => one.sent <= sent)
  return given.length === 0
    ? ['None was sent: no lot in this shipment has a hazard classification.']
    : given.map(
        ({ sheet, revision, language, sent: day }) =>
          `${sheet}, revision ${revision}, in ${language}, sent on ${dateText(day)}.`
      )
}
