/** A grade's page and that of its figures lot by lot, in German. */

import type * as english from '../../en/pages/grade.ts'
import { paper } from '../paper.ts'

export const grade: typeof english.grade = {
  title: title => `Sorte ${title}`,
  description: (kind, description) => `${kind}: ${description}`,
  status: (id, revision, from) => `${id}, Revision ${revision}, gültig ab ${from}.`,
  datasheet: 'Datenblatt (PDF)',
  keyFacts: 'Wichtigste Angaben',
  measured: paper.measuredOnEach,
  measuredCaption: 'Was an jeder Charge dieser Sorte gemessen wird',
  certifiedLimit: paper.datasheetColumns.limit,
  holdsFor: paper.datasheetColumns.holdsFor,
  reportedAlone: 'nur angegeben',
  noLimits: 'Diese Sorte hat keine Grenzwerte.',
  rule: 'Entscheidungsregel.',
  typical: 'Typisch, nach den bisher hergestellten Chargen',
  typicalCaption: confidence =>
    `Zwischen welchen Werten Chargen liegen, und wie viele mindestens, mit ${confidence} % Vertrauen`,
  from: 'Von',
  to: 'Bis',
  ofLots: 'Der Chargen, mindestens',
  lotsSeen: 'Chargen ausgewertet',
  scatter: 'Form der Streuung',
  shape: 'Form',
  shapes: paper.shapes,
  tooFew: 'Noch zu wenige Chargen, um zu sagen, was für andere typisch ist.',
  lotByLot: 'Werte Charge für Charge',
  charts: 'Diagramme',
  chartFigures: 'Werte des Diagramms',
  stated: paper.statedAsTypical,
  notMeasured: paper.notMeasured,
  declared: paper.declared,
  supply: paper.supply,
  hazards: 'Gefahren',
  cautions: 'Vorsicht',
  safety: 'Handhabung, Exposition und Abfall',
  revisions: 'Revisionen',
  revision: (n, from) => `Revision ${n}, gültig ab ${from}`,
  isNot: 'Was dies nicht ist',
  lots: 'Chargen dieser Sorte',
  lotsCaption: title => `Chargen der Sorte ${title}`,
  allLots: n => `Alle Chargen dieser Sorte (${n})`,
  noLot: 'Noch ist keine Charge dieser Sorte veröffentlicht.'
}

export const watch: typeof english.watch = {
  title: title => `Sorte ${title}, Charge für Charge`,
  grade: 'Sorte',
  heading: 'Chargen im Lauf der Zeit',
  typical: 'Typisch.',
  how: 'Wie dies zu lesen ist',
  caption: title => `${title}, Charge für Charge`,
  figure: 'Wert',
  note: 'Bemerkung'
}
