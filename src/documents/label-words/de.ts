/** A label's words in German. */

import type { LabelWords, Route } from './types.ts'

const routes: Readonly<Record<Route, string>> = {
  oral: 'oral',
  dermal: 'dermal',
  inhalation: 'inhalativ'
}

export const de: LabelWords = {
  decimalSign: ',',
  products: { batch: 'Blähgraphit', foil: 'Flexible Graphitfolie' },
  signals: { Danger: 'Gefahr', Warning: 'Achtung' },
  lot: 'Charge',
  quantity: 'Nennmenge',
  made: 'Hergestellt',
  container: 'Gebinde',
  retest: 'Nachprüfen bis',
  ec: 'EG',
  telephone: 'Tel.',
  unknown: (percent, route) =>
    `${percent} % des Gemisches bestehen aus Bestandteilen von unbekannter akuter Toxizität (${routes[route]}).`,
  contains: 'Enthält',
  keepDry: 'Trocken lagern.',
  keepBelow: temperature => `Unter ${temperature} lagern.`,
  outerPackage: 'Vollständige Kennzeichnung auf der äußeren Verpackung.',
  qr: url => `QR-Code der Adresse ${url}`,
  pictograms: {
    GHS02: 'Flamme',
    GHS03: 'Flamme über einem Kreis',
    GHS04: 'Gasflasche',
    GHS05: 'Ätzwirkung',
    GHS06: 'Totenkopf mit gekreuzten Knochen',
    GHS07: 'Ausrufezeichen',
    GHS08: 'Gesundheitsgefahr',
    GHS09: 'Umwelt'
  },
  substances: {
    'sulfuric acid': 'Schwefelsäure',
    'nitric acid': 'Salpetersäure',
    'nitric acid above 70 %': 'Salpetersäure über 70 %',
    'acetic acid': 'Essigsäure',
    'phosphoric acid': 'Phosphorsäure',
    'ammonium nitrate': 'Ammoniumnitrat',
    'potassium nitrate': 'Kaliumnitrat',
    'sodium nitrate': 'Natriumnitrat',
    'potassium permanganate': 'Kaliumpermanganat',
    'hydrogen peroxide': 'Wasserstoffperoxid',
    ammonia: 'Ammoniak',
    'sodium hydroxide': 'Natriumhydroxid',
    'sodium carbonate': 'Natriumcarbonat',
    'calcium hydroxide': 'Calciumhydroxid',
    quartz: 'Quarz',
    'potassium dichromate': 'Kaliumdichromat',
    'chromium trioxide': 'Chromtrioxid',
    'ammonium persulfate': 'Ammoniumpersulfat',
    'potassium persulfate': 'Kaliumpersulfat'
  }
}
