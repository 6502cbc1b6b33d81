/** A label's words in French. */

import type { LabelWords, Route } from './types.ts'

const routes: Readonly<Record<Route, string>> = {
  oral: 'orale',
  dermal: 'cutanée',
  inhalation: 'inhalation'
}

export const fr: LabelWords = {
  decimalSign: ',',
  products: { batch: 'Graphite expansible', foil: 'Feuille de graphite souple' },
  signals: { Danger: 'Danger', Warning: 'Attention' },
  lot: 'Lot',
  quantity: 'Quantité nominale',
  made: 'Fabriqué le',
  container: 'Emballage',
  retest: 'À recontrôler avant le',
  ec: 'CE',
  telephone: 'Tél.',
  unknown: (percent, route) =>
    `${percent} % du mélange consistent en composants de toxicité aiguë inconnue (${routes[route]}).`,
  contains: 'Contient',
  keepDry: 'Conserver au sec.',
  keepBelow: temperature => `Conserver à moins de ${temperature}.`,
  outerPackage: 'L’étiquetage complet figure sur l’emballage extérieur.',
  qr: url => `Code QR de l’adresse ${url}`,
  pictograms: {
    GHS02: 'Flamme',
    GHS03: 'Flamme au-dessus d’un cercle',
    GHS04: 'Bouteille à gaz',
    GHS05: 'Corrosion',
    GHS06: 'Tête de mort sur deux tibias',
    GHS07: 'Point d’exclamation',
    GHS08: 'Danger pour la santé',
    GHS09: 'Environnement'
  },
  substances: {
    'sulfuric acid': 'acide sulfurique',
    'nitric acid': 'acide nitrique',
    'nitric acid above 70 %': 'acide nitrique à plus de 70 %',
    'acetic acid': 'acide acétique',
    'phosphoric acid': 'acide phosphorique',
    'ammonium nitrate': 'nitrate d’ammonium',
    'potassium nitrate': 'nitrate de potassium',
    'sodium nitrate': 'nitrate de sodium',
    'potassium permanganate': 'permanganate de potassium',
    'hydrogen peroxide': 'peroxyde d’hydrogène',
    ammonia: 'ammoniac',
    'sodium hydroxide': 'hydroxyde de sodium',
    'sodium carbonate': 'carbonate de sodium',
    'calcium hydroxide': 'hydroxyde de calcium',
    quartz: 'quartz',
    'potassium dichromate': 'dichromate de potassium',
    'chromium trioxide': 'trioxyde de chrome',
    'ammonium persulfate': 'persulfate d’ammonium',
    'potassium persulfate': 'persulfate de potassium'
  }
}
