/** What differs between two revisions, in German. */

import type { changes as english } from '../en/changes.ts'

export const changes: typeof english = {
  lot: 'Charge',
  issued: 'Ausstellung',
  producer: 'Hersteller',
  overall: 'Gesamturteil',
  notMeasured: 'Nicht gemessen',
  cautions: 'Vorsicht',
  traceability: 'Metrologische Rückführung',
  signatory: 'Unterzeichner',
  hazards: 'Gefahren',
  added: (what, is) => `${what}: hinzugekommen, ${is}.`,
  leftOut: (what, was) => `${what}: entfallen, war ${was}.`,
  textDiffers: what => `${what}: Der Text weicht ab.`,
  differs: (what, was, is) => `${what}: war ${was}, jetzt ${is}.`,
  row: {
    result: 'Ergebnis',
    standing: 'Stand',
    limit: 'Grenzwert',
    verdict: 'Bewertung',
    decidedBy: 'entscheidend',
    method: 'Verfahren',
    tested: 'geprüft am',
    readings: 'Messungen',
    spread: 'Streuung',
    report: 'Bericht',
    file: 'Datei des Berichts'
  },
  bareReport: sentence => sentence.replace(/^(?:Externes|Eigenes früheres) Ergebnis: /u, ''),
  edition: (id, edition) => `${id} Ausgabe ${edition}`,
  block: {
    pictograms: 'Gefahren, Piktogramme',
    classes: 'Gefahren, Klassen',
    computed: 'Gefahren, Berechnung',
    agreement: 'Gefahren, neben der Herstellerangabe',
    reasons: 'Gefahren, Gründe',
    dust: 'Gefahren, Staub',
    basis: 'Gefahren, Grundlage',
    edition: 'Gefahren, Ausgabe des Wortlauts',
    editions: 'Gefahren, andere Ausgaben',
    transport: 'Gefahren, Transport'
  },
  words: code => `Gefahren, Wortlaut von ${code}`
}
