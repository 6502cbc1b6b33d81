/** Sentences beside a working, in German. */

import { reportingLimitBasis } from '../../../chemistry/reporting-limit.ts'
import type { FixedNote, Note } from '../../../evaluate/notes.ts'
import { formula, source } from './bases.ts'
import { number as num } from './numbers.ts'

const fixed: Readonly<Record<FixedNote, string>> = {
  'budget bends':
    'Das Budget ist nicht auf zwei Stellen linear: Innerhalb dieser Unsicherheiten ist die Formel gekrümmt, und U ist das der ersten Ordnung.',
  'scatter between sheets':
    'Die Streuung zwischen den Bögen steht neben dem Mittelwert; die Messunsicherheit ist die der Messung dieser Bögen.',
  'bulk density tested': 'Schüttdichte des Blähgraphits wie an dieser Charge geprüft.',
  'scatter of ash':
    'Messungen, die weiter auseinanderliegen, als ASTM C561-91, 10.2, zulässt (0,0127 % innerhalb eines Labors bei 0,73 % Asche, darüber im Verhältnis), werden beim Prüfen der Aufzeichnungen gemeldet.',
  'water not read': 'Das Wasser wurde nicht gemessen: Es zählt als null.',
  'foil taken as alike':
    'Die Korrektur für die Dicke setzt voraus, dass die Folie in allen Richtungen gleich leitet; durch ihre Dicke leitet sie schlechter.',
  'bounds of L':
    'L ist in 10⁻⁶ W·Ω/K² angegeben; für diese Folie ist es nicht bekannt, die Grenzen sind die anderer Folien.',
  'bolt and rig': 'Was Schraube und Vorrichtung nachgeben, ist im Wert enthalten.',
  'ideal gas':
    'Das Gas gilt als ideal, und alles, was das Volumen verliert, als am Ring vorbeigegangen.',
  'no blank read': 'Es wurde kein Blindwert mitgeführt: Er zählt als null.',
  'no blank weighed': 'Es wurde kein Blindwert gewogen: Er zählt als null.',
  'whole extract titrated': 'Der gesamte Auszug wurde titriert.',
  'reporting limit': `Berichtsgrenze als Nettoverbrauch: ${formula(reportingLimitBasis.formula)}. Quelle: ${source(reportingLimitBasis.source)}.`
}

export function note(said: Note): string {
  switch (said.is) {
    case 'pooled':
      return `Die gepoolte Wiederholpräzision des Verfahrens steht anstelle der Streuung dieser ${said.n} Messungen.`
    case 'bulk density recorded':
      return `Schüttdichte des Blähgraphits: ${num(said.written)}, wie aufgezeichnet.`
    case 'water':
      return `Wasser: ${num(said.written)}.`
    case 'heat capacity':
      return `Spezifische Wärmekapazität angenommen zu ${num(said.written)}.`
    case 'leached with':
      return `Mit ${num(said.written)} Wasser ausgelaugt.`
    case 'blank':
      return `Blindwert: ${num(said.written)}.`
    case 'titrated to pH':
      return `Bis pH ${num(said.written)} titriert.`
    case 'blanks':
      return `Blindwerte: ${said.written.map(num).join('; ')}.`
    case 'aliquot':
      return `Von einem Auszug von ${num(said.extract)} wurden ${num(said.aliquot)} titriert.`
    case 'points':
      return said.disc === undefined
        ? `Spitzen im Abstand von ${num(said.apart)} auf einem als unbegrenzt angenommenen Bogen.`
        : `Spitzen im Abstand von ${num(said.apart)} in der Mitte einer Scheibe von ${num(said.disc)}.`
    case 'closed volume':
      return `Abgeschlossenes Volumen ${num(said.volume)}, mittlerer Durchmesser des Rings ${num(said.diameter)}.`
    case 'retained':
      return `Rückstände beziehen sich auf die wiedergefundene Masse. „+${said.sieve}“ bedeutet Rückstand auf Nr. ${said.sieve}.`
    default:
      return fixed[said.is]
  }
}
