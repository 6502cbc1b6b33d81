/**
 * Numbers, dates and lists in German.
 *
 * Source: DIN 1333 and DIN 5008 (from memory, not checked against the print): a comma before decimals,
 * groups of three digits parted by a narrow space from five digits on.
 */

import type { numbers as english } from '../en/numbers.ts'

const months = [
  'Januar',
  'Februar',
  'März',
  'April',
  'Mai',
  'Juni',
  'Juli',
  'August',
  'September',
  'Oktober',
  'November',
  'Dezember'
] as const

/** '2026-03-14' → '14. März 2026'; after the day no line ends. */
export function date(day: string): string {
  const [year, month, dayOfMonth] = day.split('-')
  return `${Number(dayOfMonth)}.\u00a0${months[Number(month) - 1]} ${year}`
}

/** Days in a source's text as sentences have them. */
export const datesIn = (text: string): string => text.replace(/\b\d{4}-\d{2}-\d{2}\b/gu, date)

/** From so many digits on, thousands are parted. */
const GROUPED_DIGITS = 5

/** A space that ends no line. */
const NARROW = '\u202f'

const grouped = (digits: string): string =>
  digits.length < GROUPED_DIGITS ? digits : digits.replace(/\B(?=(?:\d{3})+$)/gu, NARROW)

/** '12345.67 g' → '12 345,67 g'; what is no decimal number, such as a lot's, must not be given. */
export const number = (text: string): string =>
  text.replace(
    /(\d+)(?:\.(\d+))?/gu,
    (_, whole: string, decimals?: string) =>
      `${grouped(whole)}${decimals === undefined ? '' : `,${decimals}`}`
  )

/** 'a', 'a und b', 'a, b und c'; 'a, x; b und c' where an item has a comma of its own. */
export function list(items: readonly string[]): string {
  const between = items.some(item => item.includes(',')) ? '; ' : ', '
  const last = items.at(-1) ?? ''
  return items.length < 2 ? last : `${items.slice(0, -1).join(between)} und ${last}`
}

export const counted = (n: number, one: string, many: string): string =>
  `${n} ${n === 1 ? one : many}`

/** German writes nouns alike everywhere. */
export const inSentence = (title: string): string => title

export const numbers: typeof english = { date, number, list, inSentence }
