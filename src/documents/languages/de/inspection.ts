/**
 * What a certificate is called and says of itself, in German.
 *
 * The German names of the types are those of DIN EN 10204:2005, table A.1 (from memory, not checked
 * against the print).
 */

import type { inspection as english } from '../en/inspection.ts'

const COMPLIES = 'Der Hersteller bestätigt, dass die Lieferung der Bestellung entspricht'

const onResults = [
  'Die Ergebnisse gelten nur für die hier genannte Charge, wie beprobt und geprüft.',
  'U ist die erweiterte Messunsicherheit für eine Überdeckungswahrscheinlichkeit von etwa 95 %; k ist ihr Erweiterungsfaktor.'
]

export const inspection: typeof english = {
  analysis: 'Analysenzertifikat',
  titles: {
    '2.1': 'Werksbescheinigung 2.1 (EN\u00a010204)',
    '2.2': 'Werkszeugnis 2.2 (EN\u00a010204)',
    '3.1': 'Abnahmeprüfzeugnis 3.1 (EN\u00a010204)'
  },
  document: 'Dokument',
  documentType: type => `EN 10204:2004, Art ${type}`,
  order: 'Bestellung',
  privateOrder: 'auf der Kundenausfertigung genannt',
  onResults: () => onResults,
  noType:
    'Dieses Zertifikat stellt der Hersteller aus. Es ist kein Bericht eines akkreditierten Laboratoriums und keine Prüfbescheinigung nach EN 10204.',
  typed:
    'EN 10204 ist für metallische Erzeugnisse geschrieben und wird auf andere nach Vereinbarung angewendet. Dies ist kein Bericht eines akkreditierten Laboratoriums.',
  last: () => [
    'Ergebnisse aus Erhitzen und Laborversuchen sind keine Feuerwiderstandsklasse.',
    'Vervielfältigung nur vollständig.'
  ],
  statements: {
    '2.1': () => [
      `Art 2.1 nach EN 10204:2004: ${COMPLIES}. Prüfergebnisse werden nicht angegeben.`
    ],
    '2.2': () => [
      `Art 2.2 nach EN 10204:2004: ${COMPLIES}, und gibt Ergebnisse nichtspezifischer Prüfung an. Sie sind für die Sorte typisch und stammen nicht aus Prüfungen an dieser Charge.`
    ],
    '3.1': signatory => [
      `Art 3.1 nach EN 10204:2004: ${COMPLIES}, und gibt Ergebnisse von Prüfungen an dieser Charge selbst an. Bestätigt durch: ${signatory}, von der Fertigungsabteilung unabhängiger Abnahmebeauftragter des Herstellers.`,
      ...onResults
    ]
  },
  complies: grade => `Als bestellungsgemäß bestätigt: ${grade}.`,
  previewStatement:
    'Dies ist eine Vorschau: Für diese Charge ist kein Zertifikat ausgestellt, und noch steht niemand für diese Werte ein.',
  amends: (before, reason) => `Ersetzt Revision ${before}. Grund: ${reason}.`
}
