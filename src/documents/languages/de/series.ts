/** Figures of many lots, in German: what is typical, how they run, where one stands among others. */

import type { series as english } from '../en/series.ts'
import { counted, date, list } from './numbers.ts'

const shapes: Record<'normal' | 'distribution-free', string> = {
  normal: 'die Werte als normalverteilt angenommen',
  'distribution-free': 'keine Form der Streuung angenommen'
}

/** '8 Chargen', in any case of the noun. */
const lots = (n: number): string => counted(n, 'Charge', 'Chargen')

export const series: typeof english = {
  period: (first, last) => (first === last ? date(first) : `${date(first)} bis ${date(last)}`),
  lots,
  typical: ({ coverage, confidence, ends, n, period, kind }) =>
    `Mindestens ${coverage} % der Chargen liegen im Bereich ${ends}, mit ${confidence} % Vertrauen: aus ${lots(n)}, hergestellt ${period}, ${shapes[kind]}.`,
  population:
    'Chargen dieser Sorte, die abgegeben wurden, und keine anderen. Wo die Sorte Grenzwerte hat, haben diese entschieden, welche Chargen das sind: Kein Intervall nimmt deren Werte dann als normalverteilt an.',
  reading: [
    'Intervalle gelten für Werte wie gemessen: Was das Messen hinzufügt, ist darin enthalten.'
  ],
  made: (n, period) => `${lots(n)}, hergestellt ${period}`,
  older: n => `${counted(n, 'ältere Charge', 'ältere Chargen')} nicht mehr betrachtet`,
  external: n =>
    `${counted(n, 'Wert', 'Werte')} ohne Einzelwerte berichtet und nicht in den Diagrammen`,
  below: n => `${counted(n, 'Wert', 'Werte')} unter der Berichtsgrenze`,
  withoutReadings: 'ohne Einzelwerte berichtet',
  minimum: value => `Minimum ${value}`,
  maximum: value => `Maximum ${value}`,
  inOrder: (n, least, greatest) =>
    `${lots(n)} nach Datum, jede mit ihrer erweiterten Messunsicherheit; kleinster Wert ${least}, größter ${greatest}.`,
  lines: names => `Linien: ${names.join(', ')}.`,
  tooFar: names => `Zu weit entfernt, um gezeichnet zu werden: ${names.join(' und ')} der Sorte.`,
  againstDensity: property => `${property} über der Foliendichte`,
  lotByLot: title => `${title}, Charge für Charge`,
  scatter: (own, others, densities, values) =>
    `${lots(own)} dieser Sorte als Punkte${others > 0 ? ` und, als Ringe, ${lots(others)} anderer Foliensorten` : ''}, jeweils mit den erweiterten Messunsicherheiten. Foliendichten ${densities}, Werte ${values}.`,
  beside: (n, isLatest, period) =>
    `Neben ${isLatest ? 'den neuesten ' : ''}${counted(n, 'anderen Charge', 'anderen Chargen')} der Sorte, hergestellt ${period}: Der Punkt ist diese Charge mit ihrer Messunsicherheit, jeder Strich eine andere Charge, jeder hohe Strich ein naher Grenzwert. ` +
    'Als darüber oder darunter zählen Chargen, die sich um mehr unterscheiden, als beide unsicher sind.',
  notTold: n => `von keiner von ${n} zu unterscheiden`,
  place: (above, below, same, n) => {
    const parts = [
      above > 0 ? `über ${above}` : '',
      below > 0 ? `unter ${below}` : '',
      same > 0 ? `nicht zu unterscheiden von ${same}` : ''
    ]
    return `${parts.filter(Boolean).join(', ')} von insgesamt ${n}`
  },
  released: n => (n === 0 ? 'keine Charge freigegeben' : `${lots(n)} freigegeben`),
  stocked: (released, n) => `${released}, ${n === 0 ? 'keine' : n} vorrätig`,
  inStock: 'vorrätig',
  curves: {
    sieve: {
      title: 'Sieblinie',
      x: 'Maschenweite in µm',
      y: 'Durchgang in Masse-%',
      summary: (n, least, greatest) =>
        `Durchgang durch ${n} Siebe von ${least} µm bis ${greatest} µm: 100 % weniger dem Rückstand auf ihm und allen gröberen, mit den erweiterten Messunsicherheiten; dazwischen gerade verbunden. Die Werte stehen bei den Ergebnissen.`
    },
    expansion: {
      title: 'Blähvolumen über der Temperatur',
      x: 'Ofen in °C',
      y: 'Blähvolumen in mL/g',
      summary: (n, least, greatest) =>
        `Blähvolumen bei ${n} Ofentemperaturen von ${least} °C bis ${greatest} °C, mit den erweiterten Messunsicherheiten; dazwischen gerade verbunden. Die Werte stehen bei den Ergebnissen.`
    }
  },
  field: {
    legend: (least, greatest) =>
      `Je voller ein Punkt, desto dicker dort der Bogen: von ${least}, offen, bis ${greatest}, gefüllt; neben jedem steht sein Wert. x läuft entlang der Länge, y entlang der Breite, beide von der linken unteren Ecke aus.`,
    length: text => `Länge ${text}`,
    width: text => `Breite ${text}`,
    readings: (n, mean, min, max, range) =>
      `${counted(n, 'Messwert', 'Messwerte')}: Mittel ${mean}, von ${min} bis ${max}, Spannweite ${range}.`,
    taper: (along, across) => `Keiligkeit entlang der Länge ${along}, über die Breite ${across}.`,
    noTaper: 'Zu wenige Messstellen, oder alle auf einer Linie: Keine Keiligkeit ist anzugeben.'
  },
  panels: {
    warning:
      'Vorprüfung im Labor, keine Einstufung des Feuerwiderstands. Wie lange eine Beschichtung schützt, ermitteln dafür akkreditierte Brandprüflaboratorien am ausgeführten Bauteil; was verlangt ist, entscheiden die örtlichen Vorschriften und sachkundige Personen.',
    heated: (from, to, until) =>
      `Stahlplatten, mit diesen Flocken beschichtet und vom ${date(from)} bis ${date(to)} erhitzt, bis ihre Rückseite ${list(until)} hatte.`,
    method: (id, edition, title, conditions) =>
      `Verfahren ${id}, Ausgabe ${edition}: ${title}; ${conditions}.`,
    means:
      'Mittelwerte über die Platten einer Beschichtung mit U für etwa 95 %, und die Streuung s zwischen ihnen. Wirksam sind allein die Flocken; die Obergrenze ist die Höhe, die sie nach ihrem eigenen Blähvolumen füllen könnten.',
    caption: 'Beschichtungen mit diesen Flocken',
    column: 'Platten',
    panels: n => counted(n, 'Platte', 'Platten'),
    titles: {
      activeMass_g_per_m2: 'Wirksame Masse je Fläche',
      charCeiling_mm: 'Obergrenze der Schaumhöhe',
      charEfficiency_percent: 'Ausnutzung der Blähung',
      timeGained_min: 'Zeitgewinn gegenüber blanker Platte',
      gainPerActiveMass_sm2_per_g: 'Zeitgewinn je wirksamer Masse'
    },
    between: 's zwischen ihnen',
    none: 'keine Angabe'
  }
}
