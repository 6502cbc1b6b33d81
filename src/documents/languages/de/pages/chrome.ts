/** What stands around every page, in German. */

import type { chrome as english, lost as englishLost } from '../../en/pages/chrome.ts'

export const chrome: typeof english = {
  description: producer => `Chargen, Sorten und Zertifikate von ${producer}.`,
  feed: 'Chargen und Zertifikate',
  skip: 'Zum Inhalt',
  site: 'Seiten',
  lots: 'Chargen',
  grades: 'Sorten',
  certificates: 'Zertifikate',
  howToRead: 'Ergebnisse lesen',
  onThisPage: 'Auf dieser Seite',
  notices: 'Hinweise',
  asOf: 'Stand:',
  setBy: version => `Gesetzt mit Lotfolio ${version}.`
}

export const lost: typeof englishLost = {
  title: 'Seite nicht gefunden',
  heading: 'Diese Seite gibt es nicht',
  lead: 'Bitte die Chargennummer mit dem Etikett vergleichen: Buchstaben, Ziffern und Bindestriche wie gedruckt.',
  list: 'Liste aller Chargen',
  unlinked: 'Liste aller Chargen, zu der die Startseite führt',
  where: (list, email) =>
    `Jede veröffentlichte Charge steht in der ${list}. Fehlt eine Charge, bitte an ${email} schreiben.`
}
