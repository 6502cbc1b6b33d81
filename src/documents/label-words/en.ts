/** A label's words in English. */

import { pictogramTitles } from '../../figures/pictograms.ts'
import type { LabelWords, Route } from './types.ts'

const routes: Readonly<Record<Route, string>> = {
  oral: 'oral',
  dermal: 'dermal',
  inhalation: 'inhalation'
}

export const en: LabelWords = {
  decimalSign: '.',
  products: { batch: 'Expandable graphite', foil: 'Flexible graphite foil' },
  signals: { Danger: 'Danger', Warning: 'Warning' },
  lot: 'Lot',
  quantity: 'Nominal quantity',
  made: 'Made',
  container: 'Container',
  retest: 'Retest by',
  ec: 'EC',
  telephone: 'Tel.',
  unknown: (percent, route) =>
    `${percent} % of the mixture consists of ingredients of unknown acute toxicity (${routes[route]}).`,
  contains: 'Contains',
  keepDry: 'Keep dry.',
  keepBelow: temperature => `Store below ${temperature}.`,
  outerPackage: 'Full label information is on the outer package.',
  qr: url => `QR code of the address ${url}`,
  pictograms: pictogramTitles,
  substances: {
    'sulfuric acid': 'sulfuric acid',
    'nitric acid': 'nitric acid',
    'nitric acid above 70 %': 'nitric acid above 70 %',
    'acetic acid': 'acetic acid',
    'phosphoric acid': 'phosphoric acid',
    'ammonium nitrate': 'ammonium nitrate',
    'potassium nitrate': 'potassium nitrate',
    'sodium nitrate': 'sodium nitrate',
    'potassium permanganate': 'potassium permanganate',
    'hydrogen peroxide': 'hydrogen peroxide',
    ammonia: 'ammonia',
    'sodium hydroxide': 'sodium hydroxide',
    'sodium carbonate': 'sodium carbonate',
    'calcium hydroxide': 'calcium hydroxide',
    quartz: 'quartz',
    'potassium dichromate': 'potassium dichromate',
    'chromium trioxide': 'chromium trioxide',
    'ammonium persulfate': 'ammonium persulfate',
    'potassium persulfate': 'potassium persulfate'
  }
}
