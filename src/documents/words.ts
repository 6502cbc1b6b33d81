/** Wording that several documents share: dates, states, rules, numbers for readers. */

import type { DecisionRule } from '../quality/judge.ts'
import type { LotState } from '../quality/status.ts'

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December'
] as const

/** '2026-03-14' → '14 March 2026'. */
export function dateText(date: string): string {
  const [year, month, day] = date.split('-')
  return `${Number(day)} ${months[Number(month) - 1]} ${year}`
}

/** Units a number must not be parted from at the end of a line. */
const UNIT = String.raw`(?:%|°C|K|kg|mg|g|mL|L|µL|mm|cm|m|µm|min|h|s|d|MPa|kPa|kJ|ppm|mol/L|g/cm³|g/m²|mL/g|mg/m³|mg/kg|µS/cm)`

const BEFORE_UNIT = new RegExp(String.raw`(?<=\d) (?=${UNIT}(?![\p{L}\d/]))`, 'gu')

/** '50 to 150' before a unit: one range, which is not parted either. */
const RANGE = new RegExp(
  String.raw`(?<=\d)(?: °C| %)? to (?=[\d.,]+[ \u00a0]${UNIT}(?![\p{L}\d/]))`,
  'gu'
)

/** A sentence of a record, its numbers and ranges held to their units by no-break spaces. */
export const unparted = (text: string): string =>
  text.replace(RANGE, range => range.replaceAll(' ', '\u00a0')).replace(BEFORE_UNIT, '\u00a0')

/** The same with plain spaces again, for programs. */
export const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ')

/** A number's text with the true minus sign, for readers. */
export const withMinus = (text: string): string => text.replace(/^-/u, '−')

/** 'a', 'a and b', 'a, b and c'; 'a, x; and b' where an item has a comma of its own. */
export function listText(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? ''
  const [between, last] = items.some(item => item.includes(','))
    ? ['; ', '; and ']
    : [', ', ' and ']
  return `${items.slice(0, -1).join(between)}${last}${items.at(-1)}`
}

export const counted = (n: number, one: string, many = `${one}s`): string =>
  `${n} ${n === 1 ? one : many}`

export const kindTexts = {
  batch: 'expandable flake graphite',
  expansion: 'furnace run',
  foil: 'flexible graphite foil'
} as const

/** Texts across each page of what is not, or no longer, to be relied on. */
export const marks = {
  preview: 'Preview, not issued',
  prepared: 'Prepared, not issued',
  calledBack: 'Do not use this lot'
} as const

/** What each decision rule does, in one sentence a customer can check. */
export const ruleTexts: Record<DecisionRule, string> = {
  simple:
    'Simple acceptance: a figure passes if it is within its limit. At the limit itself the risk of a wrong acceptance is up to 50 %.',
  rounded:
    'Simple acceptance by the rounding method: a figure is rounded to the last digit of its limit, ties to even, and passes if it is then within the limit.',
  guarded:
    'Guarded acceptance with guard band w = U: a figure passes if it is within its limit by at least its expanded uncertainty U. Within the limit by less is a conditional pass, outside it by no more than U a conditional fail. The risk of a wrong pass is at most about 2.5 % for each bound of the limit.'
}

interface DecisionText {
  readonly on: string
  readonly by: string
  readonly because?: string | undefined
}

/**
 * A lot's state as a sentence without names or customers. The reason is told where customers must
 * know it, and nowhere else.
 */
export function stateText(state: LotState, decision?: DecisionText): string {
  if (!decision) return 'In quarantine: no decision on release has been taken.'
  const when = `on ${dateText(decision.on)} by the ${decision.by}`
  const why = decision.because ? `: ${decision.because.replace(/\.$/u, '')}` : ''
  const sentences: Record<LotState, string> = {
    quarantine: `In quarantine since ${dateText(decision.on)}, by the ${decision.by}`,
    released: `Released ${when}`,
    rejected: `Rejected ${when}`,
    concession: `Released under concession ${when}, for a customer who accepted the deviation`,
    withdrawn: `Withdrawn ${when}${why}`,
    scrapped: `Scrapped ${when}`
  }
  return `${sentences[state]}.`
}
