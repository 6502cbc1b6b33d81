/** A lot in German: what it is, how it stands, whether it meets its grade. */

import type { lot as english } from '../en/lot.ts'
import type { Count } from '../parts.ts'
import { date } from './numbers.ts'

/** 'alle 7 Grenzwerte der Sorte …', as what is met. */
const all = ({ total, grade }: Count): string =>
  `${total === 1 ? 'den einzigen Grenzwert' : total === 2 ? 'beide Grenzwerte' : `alle ${total} Grenzwerte`} der ${grade}`

/** The same, as what something lies within. */
const ofAll = ({ total, grade }: Count): string =>
  `${total === 1 ? 'des einzigen Grenzwerts' : total === 2 ? 'beider Grenzwerte' : `aller ${total} Grenzwerte`} der ${grade}`

const some = ({ n, total, grade }: Count): string =>
  `${total === 1 ? 'den einzigen Grenzwert' : `${n} von ${total} Grenzwerten`} der ${grade}`

const ofSome = ({ n, total, grade }: Count): string =>
  `${total === 1 ? 'des einzigen Grenzwerts' : `von ${n} der ${total} Grenzwerte`} der ${grade}`

const forSome = ({ n, total, grade }: Count): string =>
  `${total === 1 ? 'den einzigen Grenzwert' : `${n} der ${total} Grenzwerte`} der ${grade}`

export const lot: typeof english = {
  kinds: {
    batch: 'Blähgraphit (expandierbarer Flockengraphit)',
    expansion: 'Ofenlauf',
    foil: 'Flexible Graphitfolie'
  },
  marks: {
    preview: 'Vorschau, nicht ausgestellt',
    prepared: 'Vorbereitet, nicht ausgestellt',
    calledBack: 'Diese Charge nicht verwenden'
  },
  rules: {
    simple:
      'Einfache Annahme: Ein Ergebnis ist konform, wenn es innerhalb seines Grenzwerts liegt. Am Grenzwert selbst beträgt das Risiko einer falschen Annahme bis zu 50 %.',
    rounded:
      'Einfache Annahme nach dem Rundungsverfahren: Ein Ergebnis wird auf die letzte Stelle seines Grenzwerts gerundet, bei Gleichstand zur geraden Ziffer, und ist konform, wenn es dann innerhalb des Grenzwerts liegt.',
    guarded:
      'Annahme mit Schutzabstand w = U: Ein Ergebnis ist konform, wenn es um mindestens seine erweiterte Messunsicherheit U innerhalb des Grenzwerts liegt. Liegt es um weniger innerhalb, ist es bedingt konform; liegt es um höchstens U außerhalb, bedingt nicht konform. Das Risiko einer falschen Annahme beträgt höchstens etwa 2,5 % für jede Grenze.'
  },
  undecided: 'In Quarantäne: Über die Freigabe ist noch nicht entschieden.',
  states: {
    quarantine: ({ on, by }) => `In Quarantäne seit ${date(on)} (${by}).`,
    released: ({ on, by }) => `Freigegeben am ${date(on)} (${by}).`,
    rejected: ({ on, by }) => `Zurückgewiesen am ${date(on)} (${by}).`,
    concession: ({ on, by }) =>
      `Mit Sonderfreigabe freigegeben am ${date(on)} (${by}), für einen Kunden, der die Abweichung angenommen hat.`,
    withdrawn: ({ on, by, because }) =>
      `Zurückgerufen am ${date(on)} (${by})${because === undefined ? '' : `: ${because}`}.`,
    scrapped: ({ on, by }) => `Verschrottet am ${date(on)} (${by}).`
  },
  facts: {
    lot: 'Charge',
    product: 'Produkt',
    grade: 'Sorte',
    made: 'Hergestellt',
    quantity: 'Hergestellte Menge',
    retest: 'Nachprüfen bis',
    sampling: 'Probenahme',
    cas: 'CAS-Nummer',
    article: 'Erzeugnis',
    sheet: 'Sicherheitsdatenblatt',
    packing: 'Verpackung',
    storage: 'Lagerung'
  },
  gradeFact: (title, id, revision) => `${title} (${id}), Revision ${revision}`,
  notSettled: 'nicht geklärt: eine sachkundige Person muss entscheiden',
  gradeName: (id, revision) => `Sorte ${id} (Revision ${revision})`,
  noLimit: grade => `Die ${grade} hat keinen Grenzwert, nach dem zu beurteilen wäre.`,
  answers: {
    pass: count => `Erfüllt ${all(count)}.`,
    'conditional pass': count =>
      `Innerhalb ${ofAll(count)}, jedoch um weniger als die Messunsicherheit bei: ${count.titles}.`,
    'conditional fail': count =>
      `Außerhalb ${ofSome(count)}, jedoch um höchstens die Messunsicherheit: ${count.titles}.`,
    fail: count => `Erfüllt ${some(count)} nicht: ${count.titles}.`,
    'not decidable': count => `Nicht entscheidbar gegen ${forSome(count)}: ${count.titles}.`,
    'not judged': count => `Es fehlen Messungen für ${forSome(count)}: ${count.titles}.`
  },
  alsoUndecided: titles => `Nicht entscheidbar: ${titles}.`,
  alsoMissing: titles => `Nicht gemessen: ${titles}.`,
  uncalibrated: name => `${name}: nicht kalibriert, nicht rückführbar.`,
  calibrated: (name, certificate, laboratory, on, due) =>
    `${name}: Kalibrierschein ${certificate}${laboratory ? ` (${laboratory})` : ''}, ${date(on)}, wieder fällig ${date(due)}.`,
  checked: (name, against, on, due) =>
    `${name}: im Haus geprüft${against === undefined ? '' : ` (Normal: ${against})`}, ${date(on)}, wieder fällig ${date(due)}, nicht rückführbar.`,
  standardised: (name, against, on, until) =>
    `${name}: eingestellt am ${date(on)} (Urtitersubstanz: ${against}), in Gebrauch bis ${date(until)}.`
}
