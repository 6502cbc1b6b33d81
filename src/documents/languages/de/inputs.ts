/** Inputs of models in German, by their names in code without the unit. */

import type { OpenInput } from '../../../evaluate/inputs.ts'

const names: Readonly<Record<OpenInput, string>> = {
  absoluteEnd: 'Absolutdruck am Ende',
  absoluteStart: 'Absolutdruck zu Beginn',
  after: 'Nachher',
  aliquot: 'Aliquot',
  ash: 'Asche',
  before: 'Vorher',
  blank: 'Blindwert',
  bulkDensity: 'Schüttdichte',
  charged: 'Eingesetzt',
  coefficient: 'Temperaturkoeffizient',
  concentration: 'Konzentration',
  conductivity: 'Leitfähigkeit',
  crystalDensity: 'Kristalldichte',
  current: 'Strom',
  diameter: 'Durchmesser',
  diffusivity: 'Temperaturleitfähigkeit',
  dish: 'Schale',
  dry: 'Trocken',
  end: 'Am Ende',
  expansionVolume: 'Blähvolumen',
  extract: 'Auszug',
  final: 'Am Ende',
  first: 'Erste Kante',
  foilDensity: 'Foliendichte',
  force: 'Kraft',
  freeAcid: 'Freie Säure',
  heatCapacity: 'Spezifische Wärmekapazität',
  initial: 'Beim Anziehen',
  length: 'Länge',
  loaded: 'Unter Gesamtlast',
  lorenz: 'Lorenzzahl',
  mass: 'Masse',
  moisture: 'Feuchte',
  pan: 'Boden',
  pH: 'pH',
  precipitate: 'Niederschlag',
  preload: 'Unter Vorlast',
  recovered: 'Entlastet',
  resistance: 'Widerstand',
  resistivity: 'Spezifischer Widerstand',
  second: 'Nächste Kante',
  side: 'Seitenlänge',
  slope: 'Steigung',
  soaked: 'Nach der Lagerung',
  spacing: 'Abstand der Spitzen',
  sulfur: 'Schwefel',
  temperature: 'Temperatur',
  temperatureEnd: 'Temperatur am Ende',
  temperatureStart: 'Temperatur zu Beginn',
  thickness: 'Dicke',
  time: 'Zeit',
  titrant: 'Maßlösung',
  titre: 'Verbrauch',
  volatile: 'Flüchtige Bestandteile',
  voltage: 'Spannung',
  volume: 'Volumen',
  water: 'Wasser',
  width: 'Breite'
}

const isNamed = (name: string): name is OpenInput => Object.hasOwn(names, name)

/** Names that carry a number: pieces of a roll, sieves. */
const numbered: readonly (readonly [RegExp, string])[] = [
  [/^piece(\d+)$/u, 'Stück $1'],
  [/^on (\d+ µm)$/u, 'Auf $1'],
  [/^aperture (\d+ µm)$/u, 'Maschenweite $1']
]

/** Undefined for an input that has no German name. */
export function input(name: string): string | undefined {
  if (isNamed(name)) return names[name]
  const [pattern, german] = numbered.find(([of]) => of.test(name)) ?? []
  return pattern && german && name.replace(pattern, german)
}
