/** A label's words in Italian. */

import type { LabelWords, Route } from './types.ts'

const routes: Readonly<Record<Route, string>> = {
  oral: 'orale',
  dermal: 'cutanea',
  inhalation: 'inalazione'
}

export const it: LabelWords = {
  decimalSign: ',',
  products: { batch: 'Grafite espandibile', foil: 'Foglio di grafite flessibile' },
  signals: { Danger: 'Pericolo', Warning: 'Attenzione' },
  lot: 'Lotto',
  quantity: 'Quantità nominale',
  made: 'Prodotto il',
  container: 'Contenitore',
  retest: 'Ricontrollare entro il',
  ec: 'CE',
  telephone: 'Tel.',
  unknown: (percent, route) =>
    `Il ${percent} % della miscela è costituito da componenti di tossicità acuta sconosciuta (${routes[route]}).`,
  contains: 'Contiene',
  keepDry: 'Conservare all’asciutto.',
  keepBelow: temperature => `Conservare a temperatura inferiore a ${temperature}.`,
  outerPackage: 'L’etichetta completa si trova sull’imballaggio esterno.',
  qr: url => `Codice QR dell’indirizzo ${url}`,
  pictograms: {
    GHS02: 'Fiamma',
    GHS03: 'Fiamma su cerchio',
    GHS04: 'Bombola per gas',
    GHS05: 'Corrosione',
    GHS06: 'Teschio e tibie incrociate',
    GHS07: 'Punto esclamativo',
    GHS08: 'Pericolo per la salute',
    GHS09: 'Ambiente'
  },
  substances: {
    'sulfuric acid': 'acido solforico',
    'nitric acid': 'acido nitrico',
    'nitric acid above 70 %': 'acido nitrico oltre il 70 %',
    'acetic acid': 'acido acetico',
    'phosphoric acid': 'acido fosforico',
    'ammonium nitrate': 'nitrato di ammonio',
    'potassium nitrate': 'nitrato di potassio',
    'sodium nitrate': 'nitrato di sodio',
    'potassium permanganate': 'permanganato di potassio',
    'hydrogen peroxide': 'perossido di idrogeno',
    ammonia: 'ammoniaca',
    'sodium hydroxide': 'idrossido di sodio',
    'sodium carbonate': 'carbonato di sodio',
    'calcium hydroxide': 'idrossido di calcio',
    quartz: 'quarzo',
    'potassium dichromate': 'dicromato di potassio',
    'chromium trioxide': 'triossido di cromo',
    'ammonium persulfate': 'persolfato di ammonio',
    'potassium persulfate': 'persolfato di potassio'
  }
}
