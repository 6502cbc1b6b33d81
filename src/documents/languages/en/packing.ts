/** The packing list of a shipment, in English. */

import type { Shipment } from '../../../records/types.ts'
import { counted, date } from './numbers.ts'

type Transport = NonNullable<Shipment['transport']>
export type GoodsKind = NonNullable<Shipment['contents'][number]['containers']>[number]['kind']

export const packing = {
  title: 'Packing list',
  facts: {
    sent: 'Sent',
    packages: 'Packages',
    net: 'Net mass',
    gross: 'Gross mass',
    origin: 'Origin',
    tariff: 'Tariff code',
    emergency: 'Emergency'
  },
  containers: 'Containers',
  columns: {
    container: 'Container',
    kind: 'Kind',
    lot: 'Lot',
    product: 'Product',
    tare: 'Tare, g',
    net: 'Net, g',
    gross: 'Gross, g'
  },
  grossNote: 'Gross is tare and net together where it was not weighed by itself.',
  together: 'Together',
  count: (n: number) => counted(n, 'container'),
  kind: (kind: GoodsKind, pieces: number) => (pieces === 1 ? kind : `${kind}, ${pieces} pieces`),
  handling: 'Handling',
  keepDry: 'Keep dry.',
  storeBelow: (temperature: string) => `Store below ${temperature}.`,
  noTemperature: 'No maximum storage temperature is stated.',
  carriage: 'Carriage',
  noDecision:
    'No decision on carriage by a safety adviser is on record for this shipment. Nothing in these papers says whether the goods are dangerous goods.',
  /** What an adviser found, the texts in the language. */
  decision: ({ is, as, by, on, until }: Pick<Transport, 'is' | 'as' | 'by' | 'on' | 'until'>) =>
    `${is === 'dangerous goods' ? 'Dangerous goods' : 'Not dangerous goods'}${as === undefined ? '' : `, carried as ${as}`}: decided by ${by} on ${date(on)}, valid until ${date(until)}.`,
  basis: (basis: string, tests: readonly string[]) =>
    `Basis: ${[basis, ...(tests.length > 0 ? [`tests: ${tests.join(', ')}`] : [])].join('; ')}.`,
  decidedByAdviser: 'The decision is the adviser’s; the producer reports it.',
  sheets: 'Safety data sheets',
  noSheet: 'None was sent: no lot in this shipment has a hazard classification.',
  sheet: (sheet: string, revision: number, language: string, sent: string) =>
    `${sheet}, revision ${revision}, in ${language}, sent on ${date(sent)}.`,
  certificates: 'Certificates',
  certificate: (number: string, revision: number, lot: string) =>
    `${number}, revision ${revision}, on lot ${lot}.`
}
