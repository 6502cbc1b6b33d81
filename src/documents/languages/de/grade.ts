/** What a producer says of a grade, in German: its datasheet, beside results and hazards. */

import type { grade as english } from '../en/grade.ts'
import { counted, date, list } from './numbers.ts'

export const grade: typeof english = {
  statements: [
    'Ein Datenblatt verspricht nichts für eine Charge: Was an ihr gefunden wurde und ob sie die Grenzwerte ihrer Sorte einhält, sagt ihr Zertifikat.',
    'Es ist weder ein Sicherheitsdatenblatt noch eine Prüfbescheinigung nach EN 10204.',
    'Ergebnisse beim Erhitzen und am Prüfstand sind keine Einstufung der Feuerwiderstandsdauer.'
  ],
  population: [
    'Aus Chargen dieser Sorte, die abgegeben wurden. Welche das sind, haben die Grenzwerte entschieden; wo es einen Grenzwert gibt, nimmt deshalb kein Intervall die Werte als normalverteilt an.',
    'Mindestens der angegebene Anteil der Chargen liegt zwischen den beiden Werten, diese eingeschlossen, mit dem angegebenen Vertrauen. Die Werte sind wie gemessen: Was das Messen hinzufügt, ist in den Intervallen enthalten.'
  ],
  earlier: revision =>
    `Darunter sind Chargen, die vor Revision ${revision} hergestellt wurden; sie hielten die damaligen Grenzwerte ein.`,
  ofEachLot: plan => `jeder Charge: ${plan}`,
  supply: {
    sizes: 'Formate',
    soldIn: 'Gebinde',
    keep: 'Aufbewahren',
    testedAgain: 'Erneut geprüft'
  },
  containers: { drum: 'Fass', pail: 'Eimer', pouch: 'Beutel', carton: 'Karton' },
  container: (kind, capacity, holds) => `${kind}, ${capacity}, mit ${holds}`,
  dry: 'trocken',
  below: temperature => `unter ${temperature}`,
  retest: (months, names) =>
    `nach ${counted(months, 'Monat', 'Monaten')}${names.length > 0 ? `: ${list(names)}` : ''}`,
  declared: {
    origin: 'Herkunft',
    substances: 'Besorgniserregende Stoffe',
    nothing: 'Es ist nichts erklärt.',
    basis: (basis, on, by) => `Grundlage: ${basis}. Erklärt am ${date(on)} (${by}).`
  },
  history: {
    first: 'Erste Revision.',
    nothing: 'Nichts, was hier steht.',
    title: 'Bezeichnung',
    description: 'Beschreibung',
    rule: 'Entscheidungsregel',
    precautions: 'Sicherheitshinweise',
    basis: 'Grundlage der Einstufung',
    dust: 'Staub',
    transport: 'Beförderung',
    dusts: { combustible: 'brennbar', 'not combustible': 'nicht brennbar' },
    noLimit: 'kein Grenzwert',
    byMethod: (text, method) => `${text}, nach ${method}`,
    statedAsTypical: title => `${title}, als typisch angegeben`,
    declared: about => `Erklärt, ${about}`,
    differs: what => `${what}: anderer Text.`,
    leftOut: what => `${what}: weggelassen.`,
    added: what => `${what}: hinzugefügt.`
  },
  article: {
    none: isRecorded =>
      `Eine Feststellung einer sachkundigen Person, dass diese Folie ein Erzeugnis ist, ist nicht ${isRecorded ? 'in Kraft' : 'aufgezeichnet'}: Ob sie als Gemisch einzustufen und zu kennzeichnen ist, ist offen.`,
    taken: (clause, statement) =>
      `Gilt als Erzeugnis, außerhalb der Regeln zur Einstufung von Stoffen und Gemischen (${clause}). ${statement}`,
    atMost: (title, most) => `${title} höchstens ${most}`,
    noCondition:
      'Was Wasser auslaugt, oder zurückgebliebene Säure, kann dies umstoßen: Die Feststellung nennt für keines von beiden einen Grenzwert.',
    condition: limits =>
      `Sie gilt, solange wenig ausgelaugt wird; daran wird jede Charge gemessen: ${list(limits)}.`
  }
}
