/** What is said of foil alone, in German. */

import type { foil as english } from '../en/foil.ts'
import type { VisualParts } from '../parts.ts'
import { counted, date } from './numbers.ts'

export const defectNames: Record<
  VisualParts['defects'][number]['kind'],
  readonly [string, string]
> = {
  blister: ['Blase', 'Blasen'],
  crack: ['Riss', 'Risse'],
  wrinkle: ['Falte', 'Falten'],
  scratch: ['Kratzer', 'Kratzer'],
  hole: ['Loch', 'Löcher'],
  inclusion: ['Einschluss', 'Einschlüsse'],
  'torn edge': ['Randriss', 'Randrisse'],
  delamination: ['Delamination', 'Delaminationen']
}

/** After 'Alle', and after 'von'. */
const units: Record<VisualParts['unit'], { all: [string, string]; of: [string, string] }> = {
  sheet: { all: ['Bogen', 'Bögen'], of: ['Bogen', 'Bögen'] },
  metre: { all: ['Meter', 'Meter'], of: ['Meter', 'Metern'] }
}

function visual(said: VisualParts): string {
  const { lotSize, inspected, nonconforming, takenOut, plan, isAccepted } = said
  const seen = said.defects
    .map(({ kind, count }) => counted(count, ...defectNames[kind]))
    .join(', ')
  const found =
    nonconforming === 0
      ? 'keine Einheit fehlerhaft'
      : `${nonconforming} fehlerhaft${seen ? ` (${seen})` : ''}, ${takenOut} aussortiert`
  const size = (place: 'all' | 'of') => counted(lotSize, ...units[said.unit][place])
  const verdict = isAccepted ? 'angenommen' : 'nicht angenommen'
  const whole = lotSize === 1 ? `Einziger ${units[said.unit].all[0]}` : `Alle ${size('all')}`
  if (!plan) return `${whole} besichtigt: ${found}; ${verdict}.`
  const letter =
    plan.letters.length === 1
      ? `Kennbuchstabe ${plan.letters[0]}`
      : `Kennbuchstabe ${plan.letters[0]}, verwiesen auf ${plan.letters[1]}`
  return `${inspected} von ${size('of')} besichtigt (ISO 2859-1, Einfach-Stichprobe, normale Prüfung, Niveau ${plan.level}, AQL ${plan.aql} %, ${letter}${plan.isPrinted ? '' : '; Annahmezahl aus dem Gedächtnis'}): ${found}; Annahmezahl ${plan.acceptance}, Rückweisezahl ${plan.rejection}: ${verdict}. Ein solcher Plan nimmt beim AQL ${plan.acceptedAtAql} der Stichproben aus einem Prozess an, und eine von zehn bei ${plan.onceInTen} fehlerhaften Einheiten.`
}

export const foil: typeof english = {
  sheets: (n, mass) => `${counted(n, ...units.sheet.all)}, ${mass}`,
  facts: {
    direction: 'Formgebungsrichtung',
    inhibitor: 'Inhibitor',
    visual: 'Sichtprüfung',
    fireSafe: 'Fire-Safe-Prüfung',
    oxygen: 'Eignung für Sauerstoff'
  },
  directions: {
    'along the length': 'in Längsrichtung',
    'across the length': 'quer zur Länge',
    'not marked': 'nicht gekennzeichnet'
  },
  visual,
  looks: {
    met: 'Die verlangte Sichtprüfung ist angenommen.',
    'not done': 'Die verlangte Sichtprüfung fehlt.',
    'too lenient': 'Die verlangte Sichtprüfung erfolgte nach einem Plan, der mehr durchlässt.',
    'not accepted': 'Die verlangte Sichtprüfung ist nicht angenommen.'
  },
  asked: plan => `Die Sorte verlangt sie: ${plan}.`,
  notDone: plan => `Nicht durchgeführt; die Sorte verlangt sie: ${plan}.`,
  wholeLot: 'die ganze Charge',
  plan: (level, aql) => `Niveau ${level}, AQL ${aql} %`,
  missing: {
    gasketFactors: 'Dichtungsbeiwerte m und y',
    fireSafe: 'Verhalten in einer Fire-Safe-Prüfung',
    oxygen: 'Eignung für Sauerstoff'
  },
  service: ({ says, method, laboratory, number, date: day }) =>
    `Laut Bericht über die Sorte, nicht an dieser Charge gemessen: ${says}; ${method}; ${laboratory ?? 'ein externes Labor'}, Bericht ${number} vom ${date(day)}.`
}
