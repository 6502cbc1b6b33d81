/** Numbers, dates and lists in English. */

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
export function date(day: string): string {
  const [year, month, dayOfMonth] = day.split('-')
  return `${Number(dayOfMonth)} ${months[Number(month) - 1]} ${year}`
}

/** Days in a source's text as sentences have them. */
export const datesIn = (text: string): string => text.replace(/\b\d{4}-\d{2}-\d{2}\b/gu, date)

/** A number as figures are printed, whatever stands around it: with a point, as computed. */
export const number = (text: string): string => text

/** 'a', 'a and b', 'a, b and c'; 'a, x; and b' where an item has a comma of its own. */
export function list(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? ''
  const [between, last] = items.some(item => item.includes(','))
    ? ['; ', '; and ']
    : [', ', ' and ']
  return `${items.slice(0, -1).join(between)}${last}${items.at(-1)}`
}

export const counted = (n: number, one: string, many = `${one}s`): string =>
  `${n} ${n === 1 ? one : many}`

/** 'Moisture' in a sentence: lower case but for abbreviations such as pH. */
export const inSentence = (title: string): string =>
  /^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title

export const numbers = { date, number, list, inSentence }
