/** What budget lines are called, in German. */

import type { BudgetLineParts, ReadOf } from '../../../metrology/budget-line.ts'
import type { budgetLine as english } from '../en/budget-lines.ts'
import type { Titled } from '../parts.ts'
import { date, number as num } from './numbers.ts'

const stated: Readonly<Record<Extract<BudgetLineParts, { is: 'stated' }>['what'], string>> = {
  'bulk density': 'Schüttdichte',
  'heat capacity': 'spezifische Wärmekapazität',
  'temperature of the estimate': 'Temperatur der Abschätzung'
}

const known: Readonly<Record<Extract<BudgetLineParts, { is: 'known' }>['what'], string>> = {
  'crystal density of graphite': 'Kristalldichte von Graphit',
  'temperature coefficient of conductivity': 'Temperaturkoeffizient der Leitfähigkeit',
  'L of graphite foil': 'L von Graphitfolie'
}

function readOf(of: ReadOf, titled: Titled): string {
  if ('sheet' in of) return `${of.lot}, Dicke von Bogen ${of.sheet}`
  if ('blanks' in of)
    return `${of.lot}${of.quantity === undefined ? '' : `, ${titled(of.quantity)}`}, Blindwerte`
  return `${of.lot}, ${titled(of.quantity)}`
}

export const budgetLine: typeof english = (said, titled, own) => {
  switch (said.is) {
    case 'calibration':
      return `Kalibrierung ${said.instrument}${said.of === undefined ? '' : ` vom ${date(said.of)}`}`
    case 'tolerance':
      return `Fehlergrenze ${said.instrument}${said.of === undefined ? '' : ` vom ${date(said.of)}`}`
    case 'resolution':
      return `Auflösung ${said.instrument}`
    case 'written digits':
      return 'geschriebene Stellen'
    case 'repeatability':
      return `Wiederholpräzision ${said.method}${said.ofResult === undefined ? '' : `, ${num(said.ofResult)} des Ergebnisses`} (${own(said.from)})`
    case 'concentration':
      return `Konzentration ${said.titrant}`
    case 'scatter':
      return `${readOf(said.of, titled)}: Streuung von ${said.n} Messungen${said.plane ? ' um die Ebene' : ''}`
    case 'stated':
      return `${said.lot}, ${stated[said.what]}`
    case 'time of leak':
      return `${said.lot}, Gasleckrate: Zeit von ${num(said.time)}`
    case 'reported':
      return `${said.lot}, ${titled(said.quantity)} nach Bericht ${said.report}`
    case 'aperture':
      return `mittlere Maschenweite des Siebs ${said.aperture_um} µm`
    case 'known':
      return known[said.what]
  }
}
