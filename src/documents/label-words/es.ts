/** A label's words in Spanish. */

import type { LabelWords, Route } from './types.ts'

const routes: Readonly<Record<Route, string>> = {
  oral: 'oral',
  dermal: 'cutánea',
  inhalation: 'inhalación'
}

export const es: LabelWords = {
  decimalSign: ',',
  products: { batch: 'Grafito expandible', foil: 'Lámina flexible de grafito' },
  signals: { Danger: 'Peligro', Warning: 'Atención' },
  lot: 'Lote',
  quantity: 'Cantidad nominal',
  made: 'Fabricado el',
  container: 'Envase',
  retest: 'Volver a ensayar antes del',
  ec: 'CE',
  telephone: 'Tel.',
  unknown: (percent, route) =>
    `El ${percent} % de la mezcla consiste en componentes de toxicidad aguda desconocida (${routes[route]}).`,
  contains: 'Contiene',
  keepDry: 'Mantener en lugar seco.',
  keepBelow: temperature => `Almacenar por debajo de ${temperature}.`,
  outerPackage: 'La etiqueta completa figura en el embalaje exterior.',
  qr: url => `Código QR de la dirección ${url}`,
  pictograms: {
    GHS02: 'Llama',
    GHS03: 'Llama sobre círculo',
    GHS04: 'Bombona de gas',
    GHS05: 'Corrosión',
    GHS06: 'Calavera y tibias cruzadas',
    GHS07: 'Signo de exclamación',
    GHS08: 'Peligro para la salud',
    GHS09: 'Medio ambiente'
  },
  substances: {
    'sulfuric acid': 'ácido sulfúrico',
    'nitric acid': 'ácido nítrico',
    'nitric acid above 70 %': 'ácido nítrico de más del 70 %',
    'acetic acid': 'ácido acético',
    'phosphoric acid': 'ácido fosfórico',
    'ammonium nitrate': 'nitrato de amonio',
    'potassium nitrate': 'nitrato de potasio',
    'sodium nitrate': 'nitrato de sodio',
    'potassium permanganate': 'permanganato de potasio',
    'hydrogen peroxide': 'peróxido de hidrógeno',
    ammonia: 'amoníaco',
    'sodium hydroxide': 'hidróxido de sodio',
    'sodium carbonate': 'carbonato de sodio',
    'calcium hydroxide': 'hidróxido de calcio',
    quartz: 'cuarzo',
    'potassium dichromate': 'dicromato de potasio',
    'chromium trioxide': 'trióxido de cromo',
    'ammonium persulfate': 'persulfato de amonio',
    'potassium persulfate': 'persulfato de potasio'
  }
}
