/** The first page, lists of lots, and grades, in German. */

import type * as english from '../../en/pages/archive.ts'

export const home: typeof english.home = {
  title: 'Chargen und Sorten',
  kicker: 'Blähgraphit und Graphitfolie',
  made: 'Was hergestellt wird',
  noGrade: 'Noch ist keine Sorte veröffentlicht.',
  latest: 'Neueste Chargen',
  latestCaption: 'Neueste Chargen, die jüngste zuerst',
  findAmong: n => `Eine von allen ${n} Chargen suchen`,
  noLot: 'Noch ist keine Charge veröffentlicht.'
}

export const grades: typeof english.grades = {
  title: 'Sorten',
  choose: 'Eine Sorte nach dem Bedarf auswählen',
  caption: 'Sorten, die hier hergestellt werden',
  forWhat: 'Wofür'
}

export const lists: typeof english.lists = {
  madeIn: 'Chargen, hergestellt',
  ofGrade: 'Chargen der Sorte',
  page: n => `Seite ${n}`,
  status: (n, of) => `Seite ${n} von ${of}, die jüngste zuerst.`,
  pages: 'Seiten dieser Liste',
  newest: 'Jüngste',
  newer: 'Jüngere',
  older: 'Ältere',
  oldest: 'Älteste'
}

export const archive: typeof english.archive = {
  title: 'Alle Chargen',
  table: 'Alle Werte aller Chargen als eine Tabelle (CSV, englisch)',
  find: 'Chargen suchen',
  text: 'Chargennummer, Zertifikat oder Wörter',
  hint: 'Ein Teil der Nummer genügt. Die Eingabetaste öffnet die erste gefundene Charge, Pfeiltasten gehen die Liste hinab.',
  every: { grade: 'jede Sorte', year: 'jedes Jahr', state: 'jeder Status' },
  year: 'Herstellungsjahr',
  order: 'Reihenfolge',
  orders: {
    'made down': 'jüngste zuerst',
    made: 'älteste zuerst',
    lot: 'nach Chargennummer',
    grade: 'nach Sorte',
    state: 'nach Status',
    answer: 'nach Bewertung'
  },
  between: 'Werte zwischen zwei Grenzen',
  another: 'Weiterer Wert',
  choose: 'auswählen …',
  open: 'Erste Charge öffnen',
  clear: 'Leeren',
  byYear: 'Nach Jahr',
  byGrade: 'Nach Sorte'
}
