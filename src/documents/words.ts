/** Wording that several documents share: dates, states, rules, numbers for readers. */

import type { LotState } from '../quality/status.ts'
import { lot } from './languages/en/lot.ts'
import { english } from './languages/tongue.ts'

export { date as dateText, list as listText, counted } from './languages/en/numbers.ts'

/** Units a number must not be parted from at the end of a line. */
const UNIT = String.raw`(?:%|°C|K|kg|mg|g|mL|L|µL|mm|cm|m|µm|min|h|s|d|MPa|kPa|kJ|ppm|mol/L|g/cm³|g/m²|mL/g|mg/m³|mg/kg|µS/cm)`

const BEFORE_UNIT = new RegExp(String.raw`(?<=\d) (?=${UNIT}(?![\p{L}\d/]))`, 'gu')

/** '50 to 150', '50 bis 150' before a unit: one range, which is not parted either. */
const RANGE = new RegExp(
  String.raw`(?<=\d)(?: °C| %)? (?:to|bis) (?=[\d.,]+[ \u00a0]${UNIT}(?![\p{L}\d/]))`,
  'gu'
)

/** A sentence of a record, its numbers and ranges held to their units by no-break spaces. */
export const unparted = (text: string): string =>
  text.replace(RANGE, range => range.replaceAll(' ', '\u00a0')).replace(BEFORE_UNIT, '\u00a0')

/** The same with plain spaces again, for programs. */
export const plainSpaces = (text: string): string => text.replaceAll('\u00a0', ' ')

/** A number's text with the true minus sign, for readers. */
export const withMinus = (text: string): string => text.replace(/^-/u, '−')

/** What English papers and pages call a lot, and what they say of decision rules. */
export const { kinds: kindTexts, marks, rules: ruleTexts } = lot

interface Decision {
  readonly on: string
  readonly by: string
  readonly because?: string | undefined
}

/** A text that another sentence goes on after: without its full stop. */
export const unstopped = (text: string): string => text.replace(/\.$/u, '')

/**
 * A lot's state as a sentence without names or customers. The reason is told where customers must
 * know it, and nowhere else.
 */
export function stateText(state: LotState, decision?: Decision, tongue = english): string {
  const { lot: words, own } = tongue
  if (!decision) return words.undecided
  const { on, by, because } = decision
  return words.states[state]({
    on,
    by: own(by),
    // Without a reason it is told as none: an empty one is no text.
    because: because ? unstopped(own(because)) : undefined
  })
}
