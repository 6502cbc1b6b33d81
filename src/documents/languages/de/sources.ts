/** Sources and clauses in German: the law's own German names for its parts, and a few phrases. */

import type { Certainty, Clause } from '../../../hazards/clauses.ts'
import { datesIn } from './numbers.ts'

export const certainty: Readonly<Record<Certainty, string>> = {
  print: '',
  'second hand': 'aus zweiter Hand zitiert',
  memory: 'aus dem Gedächtnis, nicht mit dem Druck verglichen'
}

/** English phrases of sources, longer ones first, and what each is in German. */
const phrases: readonly (readonly [english: RegExp, german: string])[] = [
  [
    /^Regulation \(EC\) No 1272\/2008 \(CLP\), Annex III and Annex IV Part 2, consolidated text of (\S+?)(?=;|$)/u,
    'Verordnung (EG) Nr. 1272/2008 (CLP), Anhang III und Anhang IV Teil 2, konsolidierte Fassung vom $1'
  ],
  [
    /P103 in English and P280 in English and German as Part 1 has them since Regulation \(EU\) 2019\/521/u,
    'P103 auf Englisch und P280 auf Englisch und Deutsch wie in Teil 1 seit der Verordnung (EU) 2019/521'
  ],
  [
    /^Regulation \(EC\) No 1907\/2006 \(REACH\), article 3\(3\)/u,
    'Verordnung (EG) Nr. 1907/2006 (REACH), Artikel 3 Nummer 3'
  ],
  [
    /^joint registration of EC 235-819-4: skin and eye tests \(OECD 402, 405\) not irritating/u,
    'gemeinsame Registrierung von EG 235-819-4: Haut- und Augenprüfungen (OECD 402, 405) nicht reizend'
  ],
  [/^joint registration of graphite/u, 'gemeinsame Registrierung von Graphit'],
  [
    /^UN GHS, revision (\d+) \((\S+), (\d+)\), Annex (\d), as the public list of the US National Library of Medicine prints it, its slips of the pen mended/u,
    'GHS der Vereinten Nationen, Revision $1 ($2, $3), Anhang $4, nach der öffentlichen Liste der amerikanischen National Library of Medicine, deren Schreibfehler berichtigt'
  ],
  [
    /^United States, 29 CFR 1910\.1200 \((\d+)\), Appendix C, in the spelling of the United States/u,
    'Vereinigte Staaten, 29 CFR 1910.1200 ($1), Anhang C, in amerikanischer Schreibung'
  ],
  [/^self-classification, no harmonised entry/u, 'Selbsteinstufung, kein harmonisierter Eintrag'],
  [
    /^statutory accident insurers \(Germany\), public data sheet of the substance/u,
    'gesetzliche Unfallversicherung (Deutschland), öffentliches Stoffdatenblatt'
  ],
  [
    /^common practice, no source; UN test C\.1 decides/u,
    'übliche Praxis, keine Quelle; die UN-Prüfung C.1 entscheidet'
  ],
  [/^added in practice beside /u, 'in der Praxis ergänzt neben '],
  [/combustible dust; test data decide/u, 'brennbarer Staub; Prüfdaten entscheiden'],
  [
    /\(value; reproduces the published bands of 13 % and 26 %\)/u,
    '(Wert; ergibt die veröffentlichten Bereiche von 13 % und 26 %)'
  ],
  [/^test result or recorded reason/u, 'Prüfergebnis oder aufgezeichnete Begründung'],
  [/^the substance itself, as classified/u, 'der Stoff selbst, wie eingestuft'],
  [/^as named in the record/u, 'wie in der Aufzeichnung genannt'],
  [
    /^supplier’s safety data sheet, revision (\S+) of (\S+)/u,
    'Sicherheitsdatenblatt des Lieferanten, Revision $1 vom $2'
  ],
  [/^supplier’s safety data sheet/u, 'Sicherheitsdatenblatt des Lieferanten'],
  [/\(sub-categories of mixtures\)/u, '(Unterkategorien von Gemischen)'],
  [/\(what corrodes skin damages eyes\)/u, '(was die Haut verätzt, schädigt die Augen)'],
  [/\(UN tests O\.1 and O\.3\)/u, '(UN-Prüfungen O.1 und O.3)'],
  [/\(UN test (\S+)\)/u, '(UN-Prüfung $1)'],
  [/\(flash point\)/u, '(Flammpunkt)'],
  [/, tables of cut-offs/u, ', Tabellen der Berücksichtigungsgrenzen'],
  [/\bAppendix\b/u, 'Anhang'],
  [/\bAnnex\b/gu, 'Anhang'],
  [/\bTables\b/gu, 'Tabellen'],
  [/\bTable\b/gu, 'Tabelle'],
  [/ and /gu, ' und ']
]

/** A source in German; words that none of these phrases is stay as they are. */
export const source = (text: string): string =>
  datesIn(phrases.reduce((said, [english, german]) => said.replace(english, german), text))

/** A source with how sure it is. */
export const cited = ({ source: text, sure }: Clause): string =>
  sure === 'print' ? source(text) : `${source(text)} (${certainty[sure]})`

/** A wording of statements as papers name it, in English, with how surely it was read. */
export const wording = (edition: string): string =>
  source(edition)
    .replace(/\(from memory, not checked against the print\)/u, `(${certainty.memory})`)
    .replace(/\(quoted at second hand\)/u, `(${certainty['second hand']})`)
