/** Choosing a grade, comparing lots and checking a certificate, in German: what stands before a script runs. */

import type * as english from '../../en/pages/choice.ts'

export const choose: typeof english.choose = {
  title: 'Eine Sorte auswählen',
  lead: 'Was jede Sorte einhalten muss, was für ihre Chargen typisch ist und welche Chargen freigegeben sind.',
  needed: kind => `Bedarf: ${kind}`,
  ends: { from: 'mindestens', to: 'höchstens' },
  to: 'bis',
  field: (title, end, unit) => `${title}, ${end}${unit === '' ? '' : `, in ${unit}`}`,
  go: 'Zu den Antworten',
  clear: 'Leeren',
  nothing: 'noch ist nichts gefragt',
  caption: 'Sorten und Bedarf',
  lots: 'Chargen',
  certified: of => `garantiert, ${of}`,
  typical: (printed, n) => `typisch ${printed}, aus ${n} Chargen`,
  silent: 'keine Angabe',
  noGrade: 'Noch ist keine Sorte veröffentlicht.',
  how: 'Wie dies zu lesen ist',
  limits:
    'Nach einem garantierten Grenzwert wird jede Charge bewertet, bevor sie freigegeben wird. Typische Werte stammen von Chargen, die abgegeben wurden, und versprechen nichts für die nächste; wie viele Chargen mindestens dazwischen liegen, sagt die Seite der Sorte.',
  temperature: allLots =>
    `Keine Sorte nennt eine höchste Anwendungstemperatur: Die Onset-Temperatur sagt, wo Flocken zu expandieren beginnen, der Oxidationsverlust, was Folie in heißer Luft bei der Temperatur und nach den Stunden ihres Verfahrens verliert. Werte einzelner Chargen lassen sich unter ${allLots} suchen.`,
  allLots: 'allen Chargen',
  answers:
    'Ein garantierter Grenzwert erfüllt den Bedarf, wenn er innerhalb des Gefragten liegt; typische Werte erfüllen ihn, wenn sie es tun. Eine freigegebene Charge erfüllt ihn, wenn ihr Ergebnis mitsamt der erweiterten Messunsicherheit darin liegt; ein Ergebnis ohne Messunsicherheit zählt nicht, und wo eine Charge kein Ergebnis hat, gilt der Grenzwert der Sorte.',
  stock: 'Wo nichts zum Vorrat steht, veröffentlicht der Hersteller ihn nicht.'
}

export const compare: typeof english.compare = {
  title: 'Chargen vergleichen',
  lead: 'Zwei bis sechs Chargen nebeneinander, und ob sich ihre Werte um mehr unterscheiden, als sie unsicher sind.',
  unscripted: table =>
    `Diese Seite braucht JavaScript. Ohne JavaScript: zwei Chargen nebeneinander öffnen oder ${table} in eine Tabellenkalkulation laden.`,
  table: 'die Tabelle aller Werte',
  lot: 'Chargennummer oder ein Teil davon',
  add: 'Hinzufügen',
  against: 'Unterschiede zu',
  csv: 'Als CSV herunterladen',
  print: 'Drucken',
  how: 'Wie Chargen verglichen werden',
  differences:
    'Ein Unterschied wird an seiner eigenen erweiterten Messunsicherheit gemessen, für etwa 95 % Vertrauen, nicht an den Unsicherheiten der beiden Werte. Steht ein Messgerät oder eine Maßlösung hinter beiden, so fällt aus dem Unterschied heraus, was beide gleich trifft; die Streuung der Messungen bleibt darin.',
  independent:
    'Wo die Rechengänge einer Sorte nicht veröffentlicht sind, gelten ihre Werte als unabhängig von allen anderen, und es steht dabei. Werte unter einer Berichtsgrenze oder ohne Messunsicherheit werden nicht verglichen. Werte nach verschiedenen Verfahren oder Ausgaben eines Verfahrens werden verglichen und gekennzeichnet: Ein solcher Unterschied kann an den Verfahren liegen.',
  chance:
    'Von vielen verglichenen Werten unterscheidet sich etwa einer von zwanzig rein zufällig. Die Striche einer Zeile haben eine gemeinsame Skala, die alle Intervalle der Zeile umfasst.'
}

export const verify: typeof english.verify = {
  title: 'Ein Zertifikat prüfen',
  lead: 'Ist die vorliegende Ausfertigung die ausgestellte, und gilt sie noch? Der Browser vergleicht sie mit dem Register dieser Website. Die Datei wird nirgendwohin gesendet.',
  copy: 'Die Ausfertigung',
  drop: 'Das Zertifikat als PDF oder seine JSON-Datei: hier ablegen oder auswählen',
  unscripted: page =>
    `Diese Seite braucht JavaScript, um die Datei zu lesen. Ohne JavaScript: den Fingerabdruck auf dem Zertifikat von Hand mit dem auf ${page} vergleichen.`,
  page: 'seiner Seite',
  answers: 'Was die Antworten bedeuten',
  genuine: 'Echt',
  genuineMeans: 'Die Ausfertigung ist Byte für Byte die ausgestellte, und sie gilt.',
  superseded: 'Ersetzt',
  supersededMeans: 'Sie wurde ausgestellt; eine spätere Revision ist an ihre Stelle getreten.',
  withdrawn: 'Zurückgezogen',
  withdrawnMeans: 'Sie wurde ausgestellt, und man darf sich nicht mehr darauf verlassen.',
  altered: 'Verändert',
  alteredMeans:
    'Sie trägt die Nummer eines ausgestellten Zertifikats, ist aber nicht, was ausgestellt wurde.',
  unknown: 'Unbekannt',
  unknownMeans: 'Das Register dieser Website hat kein solches Zertifikat.',
  proves: 'Was dies belegt',
  provesText:
    'Dass eine Ausfertigung mit dem übereinstimmt, was dieser Hersteller in sein Register eingetragen hat, und dass dem Register nur hinzugefügt wurde. Über das Material sagt es nichts, was nicht auf dem Zertifikat steht.'
}
