/** A lot's page, in German. */

import { capital } from '../../../capital.ts'
import type * as english from '../../en/pages/lot.ts'
import { wording } from '../sources.ts'

export const lot: typeof english.lot = {
  title: (lot, kind) => `Charge ${lot}, ${kind}`,
  heading: lot => `Charge ${lot}`,
  grade: 'Sorte',
  revision: n => `Revision ${n}`,
  meets: 'Entspricht sie ihrer Sorte?',
  keyFacts: 'Wichtigste Angaben',
  results: 'Prüfergebnisse',
  pictures: 'Bilder',
  amongGrade: 'Innerhalb der Sorte',
  amongLots: 'Unter den Chargen ihrer Sorte',
  rule: 'Entscheidungsregel',
  papers: 'Papiere',
  workings: 'Rechengänge',
  screening: 'Beschichtete Prüfplatten',
  chain: 'Kette der Chargen',
  traceability: 'Metrologische Rückführung',
  hazards: 'Gefahren',
  cautions: 'Vorsicht',
  compare: 'Mit anderen Chargen vergleichen',
  onLot: 'an dieser Charge',
  howToRead: 'Was U, k, P und die Bewertungen bedeuten',
  curves: 'Kurven',
  field: 'Dicke über die Bögen',
  readings: 'Die Messwerte als Tabelle:',
  workingOfThickness: 'Rechengang der Dicke',
  unfolded:
    'Gezeigt sind die Rechengänge, die beim Drucken aufgeklappt waren; die übrigen stehen auf der Seite selbst.',
  copy: lot => `Ausdruck der Seite zur Charge ${lot}.`,
  certificateIsPdf: 'Das Zertifikat ist die PDF-Datei.',
  certificatePage: 'Die Seite des Zertifikats:',
  thisLot: '(diese Charge)',
  from: 'aus',
  picture: (n, lot, caption) => `Bild ${n} der Charge ${lot}: ${caption}`,
  bar: length => `Der Balken ist ${length} lang`,
  strip: (value, place, others) => `${value}, ${place}; die anderen von ${others}.`,
  noStatement: 'Es ist kein Gefahrenhinweis angegeben.',
  why: 'Warum',
  wording: edition => `Wortlaut: ${wording(edition)}.`,
  rejected: 'Diese Charge wurde zurückgewiesen und ist nicht verkäuflich.',
  concession:
    'Diese Charge wurde mit Sonderfreigabe abgegeben und ist nicht für den allgemeinen Verkauf freigegeben.',
  unpublished: grade =>
    `Die Ergebnisse der Sorte ${grade} werden nicht veröffentlicht; ob die Charge freigegeben wurde, sagt ihr Status.`
}

export const results: typeof english.results = {
  property: 'Eigenschaft',
  result: 'Ergebnis',
  external: 'extern',
  earlier: 'frühere Aufzeichnung',
  externalMark: 'Extern',
  earlierMark: 'Frühere Aufzeichnung',
  working: 'Rechengang',
  workingOf: title => `: ${title}`,
  verdict: 'Bewertung',
  probability: 'Wahrscheinlichkeit, dass der wahre Wert den Grenzwert einhält',
  count: 'Anzahl der Messungen oder Bögen',
  decidedBy: printed => `entscheidend: ${printed}`,
  notJudged: 'nicht bewertet',
  noMethod: 'kein Verfahren angegeben',
  testedOn: 'geprüft am',
  typicalValue: 'Typischer Wert',
  gradeLimit: 'Grenzwert der Sorte',
  measured: where => `${capital(where)} gemessen`,
  typical: where => `Typisch für die Sorte, ${where} nicht gemessen`,
  missing: 'Nicht gemessen: kein Wert für diese Charge',
  whyVerdicts: 'Begründung der Bewertungen',
  formula: 'Formel',
  source: 'Quelle:',
  method: 'Verfahren:',
  outcome: 'Ergebnis:'
}

export const reading: typeof english.reading = {
  heading: 'Ergebnisse lesen',
  lead: example =>
    `Ein Ergebnis steht mit seiner Messunsicherheit und der Einheit da: ${example} (ein Beispiel).`,
  example: '262,1 ± 4,3 mL/g, k = 2,04',
  U: 'Erweiterte Messunsicherheit. Der wahre Wert wird zwischen Ergebnis − U und Ergebnis + U erwartet, mit etwa 95 % Vertrauen.',
  k: 'Erweiterungsfaktor: für wie viele Standardunsicherheiten U steht. Je weniger Messungen hinter einem Ergebnis stehen, desto größer ist k.',
  belowExample: '< 0,02',
  below: 'Weniger, als das Verfahren angeben kann. Es ist nicht null.',
  limit: 'Was die Sorte verlangt. ≥ heißt mindestens, ≤ heißt höchstens.',
  pass: 'Hält den Grenzwert ein, mit dem Abstand, den die Entscheidungsregel verlangt.',
  conditionalPass: 'Das Ergebnis hält den Grenzwert ein, jedoch mit weniger als diesem Abstand.',
  conditionalFail: 'Das Ergebnis verfehlt den Grenzwert, jedoch um weniger als diesen Abstand.',
  fail: 'Hält den Grenzwert nicht ein.',
  notDecidable:
    'Das Ergebnis kann es nicht entscheiden, etwa eine obere Schranke gegen einen unteren Grenzwert.',
  P: 'Konformitätswahrscheinlichkeit: wie wahrscheinlich es ist, dass der wahre Wert den Grenzwert einhält.',
  n: 'Anzahl der Messungen oder Bögen hinter dem Ergebnis.',
  typicalTerm: 'Typisch',
  typical: notMeasured =>
    `Üblich für die Sorte, an der Charge nicht gemessen. ${notMeasured} heißt, dass es keinen Wert gibt.`,
  notMeasured: 'Nicht gemessen'
}
