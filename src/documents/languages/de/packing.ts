/** The packing list of a shipment, in German. */

import type { GoodsKind, packing as english } from '../en/packing.ts'
import { counted, date } from './numbers.ts'

const kinds: Readonly<Record<GoodsKind, string>> = {
  drum: 'Fass',
  pail: 'Eimer',
  pouch: 'Beutel',
  carton: 'Karton',
  jar: 'Dose',
  roll: 'Rolle',
  sheet: 'Bogen'
}

export const packing: typeof english = {
  title: 'Packliste',
  facts: {
    sent: 'Versandt',
    packages: 'Packstücke',
    net: 'Nettomasse',
    gross: 'Bruttomasse',
    origin: 'Ursprung',
    tariff: 'Zolltarifnummer',
    emergency: 'Notrufnummer'
  },
  containers: 'Gebinde',
  columns: {
    container: 'Gebinde',
    kind: 'Art',
    lot: 'Charge',
    product: 'Produkt',
    tare: 'Tara, g',
    net: 'Netto, g',
    gross: 'Brutto, g'
  },
  grossNote: 'Brutto ist Tara und Netto zusammen, wo es nicht selbst gewogen wurde.',
  together: 'Zusammen',
  count: n => counted(n, 'Gebinde', 'Gebinde'),
  kind: (kind, pieces) => (pieces === 1 ? kinds[kind] : `${kinds[kind]}, ${pieces} Stück`),
  handling: 'Handhabung',
  keepDry: 'Trocken lagern.',
  storeBelow: temperature => `Unter ${temperature} lagern.`,
  noTemperature: 'Eine höchste Lagertemperatur ist nicht angegeben.',
  carriage: 'Beförderung',
  noDecision:
    'Zu dieser Lieferung liegt keine Entscheidung eines Sicherheitsberaters über die Beförderung vor. Nichts in diesen Papieren sagt, ob die Ware Gefahrgut ist.',
  decision: ({ is, as, by, on, until }) =>
    `${is === 'dangerous goods' ? 'Gefahrgut' : 'Kein Gefahrgut'}${as === undefined ? '' : `, befördert als ${as}`}: entschieden von ${by} am ${date(on)}, gültig bis ${date(until)}.`,
  basis: (basis, tests) =>
    `Grundlage: ${[basis, ...(tests.length > 0 ? [`Prüfungen: ${tests.join(', ')}`] : [])].join('; ')}.`,
  decidedByAdviser: 'Die Entscheidung ist die des Beraters; der Hersteller gibt sie wieder.',
  sheets: 'Sicherheitsdatenblätter',
  noSheet: 'Es wurde keines versandt: Keine Charge dieser Lieferung ist als gefährlich eingestuft.',
  sheet: (sheet, revision, language, sent) =>
    `${sheet}, Revision ${revision}, Sprache: ${language}, versandt am ${date(sent)}.`,
  certificates: 'Zertifikate',
  certificate: (number, revision, lot) => `${number}, Revision ${revision}, zur Charge ${lot}.`
}
