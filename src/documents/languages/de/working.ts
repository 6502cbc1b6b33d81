/**
 * How a figure came about, in German: what stands around formulas, readings, inputs and budgets.
 *
 * Terms as the German editions of the GUM and the VIM have them (from memory, not checked against the print).
 */

import { sieveText } from '../../../metrology/sieves.ts'
import type { working as english } from '../en/working.ts'
import { formula, source } from './bases.ts'
import { budgetLine } from './budget-lines.ts'
import { defectNames } from './foil.ts'
import { input } from './inputs.ts'
import { column } from './columns.ts'
import { note } from './notes.ts'
import { counted, date } from './numbers.ts'

export const working: typeof english = {
  method: (id, edition, title) => `${id}, Ausgabe ${edition}: ${title}`,
  outcome: (sum, k, df) =>
    `${sum} (k = ${k}; ${
      df === undefined
        ? 'unbegrenzte effektive Freiheitsgrade'
        : counted(df, 'effektiver Freiheitsgrad', 'effektive Freiheitsgrade')
    })`,
  below: (outcome, limit) => `${outcome}, unter der Berichtsgrenze von ${limit}`,
  recorded: 'Wie aufgezeichnet',
  inputs: 'Eingangsgrößen',
  inputsOf: place => `Eingangsgrößen, ${place}`,
  budget: 'Messunsicherheitsbudget',
  exact: 'als exakt angenommen',
  columns: {
    reading: 'Messung',
    input: 'Eingangsgröße',
    value: 'Wert',
    uncertainty: 'Standardmessunsicherheit',
    instrument: 'Messgerät',
    cause: 'Ursache',
    type: 'Typ',
    freedom: 'Freiheitsgrade',
    share: 'Anteil an der Varianz'
  },
  inUnit: (title, unit) => `${title} in ${unit}`,
  column: of =>
    typeof of === 'string' ? column[of] : `Auf ${sieveText(of).replace('No.', 'Nr.')}`,
  several: readings => readings.join('; '),
  input,
  formula,
  source,
  note,
  budgetLine,
  places: {
    caption: 'Messwerte und ihre Stellen',
    sheet: 'Bogen',
    thickness: 'Dicke, mm',
    above: 'Über der Ebene, mm'
  },
  reported: {
    formula: 'wie berichtet: Einzelwerte sind hier nicht bekannt',
    source: ({ isOwn, number, by, date: day }) =>
      isOwn
        ? `frühere eigene Aufzeichnung ${number} des Herstellers, ${date(day)}`
        : `Bericht ${number} von ${by}, ${date(day)}`,
    method: method => `Verfahren laut Bericht: ${method}.`,
    scope: scope => `Geltungsbereich laut Bericht: ${scope}.`,
    withoutUncertainty: why => `Keine Messunsicherheit angegeben: ${why}.`
  },
  visual: {
    title: 'Sichtprüfung',
    formula:
      'P = Σ f · g / h, f Zahl der Möglichkeiten für k aus den D fehlerhaften Einheiten, g für die übrigen n − k aus den N − D fehlerfreien, h für n aus allen N, k von 0 bis Ac',
    source: isPrinted =>
      `hypergeometrische Verteilung; ISO 2859-1, Einfach-Stichprobe, normale Prüfung, Zahlen wie in MIL-STD-105E, Tabelle II-A${isPrinted ? '' : ' (aus dem Gedächtnis, nicht mit dem Druck verglichen)'}`,
    outcome: ({ nonconforming, inspected, acceptance, rejection, isAccepted }) =>
      `${nonconforming} von ${inspected} fehlerhaft, Ac ${acceptance}, Re ${rejection}: ${isAccepted ? 'angenommen' : 'nicht angenommen'}`,
    seen: 'Was gefunden wurde',
    defect: 'Fehler',
    defects: kind => defectNames[kind][0],
    count: 'Anzahl',
    plan: 'Plan',
    rows: (
      { unit, lotSize, level, aql, letters, sampleSize, acceptance },
      acceptedAtAql,
      onceInTen
    ) => [
      [unit === 'sheet' ? 'Charge, in Bögen' : 'Charge, in Metern', String(lotSize)],
      ['Prüfniveau', level],
      ['AQL', `${aql} %`],
      ['Kennbuchstabe', letters.join(' → ')],
      ['Stichprobenumfang', String(sampleSize)],
      ['Annahmezahl', String(acceptance)],
      ['Beim AQL angenommen', acceptedAtAql],
      ['In einem von zehn Fällen angenommen', `${onceInTen} fehlerhaft`]
    ],
    odds: 'Wie oft der Plan diese Charge annimmt',
    nonconforming: 'Fehlerhaft in der Charge',
    accepted: 'Angenommen',
    of: (n, total) => `${n} von ${total}`,
    note: 'Auch eine angenommene Charge kann fehlerhafte Einheiten enthalten.'
  },
  statement: {
    title: 'Rechengänge',
    facts: { product: 'Produkt', grade: 'Sorte', made: 'Hergestellt', status: 'Status' },
    grade: (title, revision) => `${title}, Revision ${revision}`,
    made: date,
    says: [
      'Zu jedem Wert stehen hier die Formel, die Einzelwerte wie aufgezeichnet, die Eingangsgrößen einer Messung und jede Ursache seiner Messunsicherheit mit ihrem Anteil an der Varianz.',
      'Die erweiterte Messunsicherheit ist das k-Fache der Standardmessunsicherheit, für eine Überdeckungswahrscheinlichkeit von etwa 95 %; der Erweiterungsfaktor k folgt aus der t-Verteilung nach Student mit den effektiven Freiheitsgraden.',
      'Dies ist kein Zertifikat: Es bewertet nichts und steht nicht im Register.'
    ]
  }
}
