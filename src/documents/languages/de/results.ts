/** Results and verdicts in German. */

import { PRODUCER, UNNAMED } from '../../../evaluate/measurers.ts'
import type { Remark, Report } from '../../../evaluate/types.ts'
import type { Scope } from '../../../judge/types.ts'
import type { DecisionRule, VerdictWord } from '../../../quality/judge.ts'
import type { results as english } from '../en/results.ts'
import { counted, date, number as num } from './numbers.ts'

const nouns: Record<Scope, readonly [one: string, many: string]> = {
  'lot mean': ['Mittelwert', 'Mittelwerten'],
  'every sheet': ['Bogen', 'Bögen'],
  'every reading': ['Messwert', 'Messwerten']
}

function standing(word: VerdictWord, limit: string, rule: DecisionRule): string {
  const rounded = rule === 'rounded' ? ' nach Runden auf dessen letzte Stelle' : ''
  const isGuarded = rule === 'guarded'
  const phrases: Record<VerdictWord, string> = {
    pass: `liegt${isGuarded ? ' um mindestens U' : rounded} innerhalb des Grenzwerts (${limit})`,
    'conditional pass': `liegt innerhalb des Grenzwerts (${limit}), aber um weniger als U`,
    'conditional fail': `liegt außerhalb des Grenzwerts (${limit}), aber um höchstens U`,
    fail: `liegt${isGuarded ? ' um mehr als U' : rounded} außerhalb des Grenzwerts (${limit})`,
    'not decidable': `ist gegen den Grenzwert (${limit}) nicht entscheidbar`
  }
  return phrases[word]
}

const gases = { nitrogen: 'Stickstoff', helium: 'Helium', methane: 'Methan' } as const

const directions = { along: 'Längs', across: 'Quer' } as const

function remark(said: Remark): string {
  switch (said.is) {
    case 'soaked':
      return `${num(said.time)} in Wasser von ${num(said.at)} eingeweicht.`
    case 'held':
      return `${num(said.time)} bei ${num(said.at)} gehalten.`
    case 'defined':
      return `Definiert als: ${said.as}${said.rate === undefined ? '' : `, Heizrate ${num(said.rate)}`}.`
    case 'cut':
      return `Streifen ${said.direction === 'along' ? 'längs' : 'quer'} zur Formgebungsrichtung geschnitten.`
    case 'clamped':
      return `Mit ${num(said.with)} verspannt, ${num(said.time)} bei ${num(said.at)} gehalten.`
    case 'leaked':
      return `Gas: ${gases[said.gas]}, von ${num(said.pressure)} absolut an, Ring unter ${num(said.stress)}, bei ${num(said.at)}.`
    case 'heat flowed':
      return `${directions[said.direction]} zur Formgebungsrichtung gemessen, bei ${num(said.at)}.`
    case 'heat estimated':
      return `Für ${num(said.at)} geschätzt aus der Leitfähigkeit ${directions[said.direction].toLowerCase()} zur Formgebungsrichtung geschnittener Streifen; Wärme wurde nicht gemessen.`
    case 'spliced':
      return said.at.length === 0
        ? 'In einem Stück, ohne Stoß.'
        : `${counted(said.at.length, 'Stoß', 'Stöße')}, bei ${said.at.map(num).join('; ')}; längstes Stück ${num(said.longest)}.`
    case 'from report':
      return `Aus dem externen Ergebnis für Schwefel: gemessen von ${said.by}, Bericht ${said.number}.`
    case 'process':
      return said.text
  }
}

function report(said: Report): string {
  const { by, number, date: day, method, scope, withoutUncertainty, isOwn } = said
  const parts = [
    isOwn
      ? `Eigenes früheres Ergebnis: gemessen von ${by}, ohne Einzelwerte übernommen aus Aufzeichnung ${number} vom ${date(day)}`
      : `Externes Ergebnis: gemessen von ${by}, Bericht ${number} vom ${date(day)}`,
    method && `Verfahren laut Bericht: ${method}`,
    scope && `Geltungsbereich: ${scope}`,
    withoutUncertainty && `keine Messunsicherheit angegeben: ${withoutUncertainty}`
  ]
  return `${parts.filter(part => part).join('; ')}.`
}

const place = (label: string): string =>
  label
    .replace(/^sheet /u, 'Bogen ')
    .replace(/\bposition (?=\d)/u, 'Messstelle ')
    .replace(/\breading (?=\d)/u, 'Messung ')

export const results: typeof english = {
  scopes: {
    'lot mean': 'Mittelwert der Charge',
    'every sheet': 'jeder Bogen',
    'every reading': 'jeder Messwert'
  },
  between: (min, max) => `${min} bis ${max}`,
  place,
  whose: (count, scope, decides) =>
    `Von ${counted(count, ...nouns[scope])} entscheidet ${decides}: `,
  standing,
  verdict: (figure, stands) => `${figure} ${stands}.`,
  below: (figure, limit) => `Das Ergebnis liegt unter ${figure}; der Grenzwert ist ${limit}.`,
  unlimited: 'unbegrenzt',
  overPositions: (n, min, max, range) =>
    `Über ${n} Messstellen: von ${min} bis ${max}, Spannweite ${range} % des Mittelwerts.`,
  betweenSheets: (n, s, min, max) => `Zwischen ${n} Bögen: s = ${s}, von ${min} bis ${max}.`,
  remark,
  report,
  measurers: { [UNNAMED]: 'einem externen Labor', [PRODUCER]: 'dem Hersteller' },
  noUncertainty: 'keine Messunsicherheit angegeben',
  beside: (figure, { by, number, date: day, isOwn }) =>
    isOwn
      ? `Daneben steht ${figure} in der eigenen früheren Aufzeichnung ${number} vom ${date(day)}.`
      : `Daneben steht ${figure}, berichtet von ${by}, Bericht ${number} vom ${date(day)}.`,
  reportedOfLot: (figure, isOwn, limit, scope) =>
    `${figure} wurde für die Charge ${isOwn ? 'aufgezeichnet' : 'berichtet'}; der Grenzwert ${limit} gilt für ${scope === 'every sheet' ? 'jeden Bogen' : 'jeden Messwert'}.`,
  reported: (figure, isOwn, stands) =>
    `${figure}, wie ${isOwn ? 'aufgezeichnet' : 'berichtet'}, ${stands}.`
}
