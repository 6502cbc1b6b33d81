/** A customer's copy of a certificate, in German. */

import type { copy as english } from '../en/copy.ts'
import { counted, date } from './numbers.ts'

export const copy: typeof english = {
  customer: 'Kunde',
  address: 'Anschrift',
  order: 'Bestellung',
  noOrder: 'keine Bestellnummer',
  shipment: 'Lieferung',
  part: 'Ihre Teilenummer',
  quantity: 'Menge',
  inContainers: (mass, n, numbers) => `${mass} in ${counted(n, 'Gebinde', 'Gebinden')}: ${numbers}`,
  statement: (shipment, sent) =>
    `Kundenausfertigung zur Lieferung ${shipment} vom ${date(sent)}: das Zertifikat gleicher Nummer, mit Kunde, Bestellung, Menge und dem Namen des Unterzeichners. Die Ergebnisse sind die ausgestellten.`,
  again: (copyNumber, reason) =>
    `Ausfertigung ${copyNumber} zu dieser Lieferung, anstelle von Ausfertigung ${copyNumber - 1}: ${reason}.`,
  preview: 'Vorschau einer Kundenausfertigung, nicht versandt',
  meets: total =>
    `Erfüllt ${total === 1 ? 'den Grenzwert' : `alle ${total} Grenzwerte`} des Kunden.`,
  misses: (n, total, titles) =>
    `Erfüllt ${n} von ${counted(total, 'Grenzwert', 'Grenzwerten')} des Kunden nicht: ${titles}.`,
  limits: 'Grenzwerte des Kunden',
  columns: {
    property: 'Eigenschaft',
    unit: 'Einheit',
    result: 'Ergebnis',
    uncertainty: 'U',
    limit: 'Grenzwert',
    verdict: 'Bewertung'
  },
  accepted: (by, on, because) => `Vom Kunden dennoch angenommen: ${by}, ${date(on)}: ${because}.`
}
