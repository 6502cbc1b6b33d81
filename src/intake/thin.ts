/** A log of thousands of lines to those a record should hold. */

import type { Item } from './items.ts'
import { numberAndUnit } from '../tables/numbers.ts'
import { unitNamed, units } from '../metrology/units.ts'

/** Seconds of a moment as a logger writes it: '14:05:30', '2026-03-14 14:05', '90 s', '1.5 min'. */
export function secondsOf(text: string): number | undefined {
  const clock = /(?:^|[T\s])(\d{1,3}):([0-5]\d)(?::([0-5]\d))?(?:[.,]\d+)?(?:\s*Z)?$/u.exec(text)
  if (clock) return (Number(clock[1]) * 60 + Number(clock[2])) * 60 + Number(clock[3] ?? 0)
  const elapsed = numberAndUnit(text)
  const unit = unitNamed(elapsed?.unit ?? '')
  if (!elapsed || !unit || units[unit].dimension !== 'time' || elapsed.number.includes(','))
    return undefined
  return Number(elapsed.number) * Number(units[unit].factor)
}

const textOf = (item: Item, field: string) => {
  const value = item.fields.get(field)
  return typeof value === 'string' ? value : ''
}

const DAY_s = 86_400

/**
 * The first line, each at least `every_s` after the last one kept, the hottest and the last.
 *
 * @returns undefined where a moment cannot be read
 */
export function thinned(items: readonly Item[], every_s: number): readonly Item[] | undefined {
  const moments = items.map(item => secondsOf(textOf(item, 'at')))
  if (moments.some(moment => moment === undefined)) return undefined
  const heat = items.map(item => Number.parseFloat(textOf(item, 'temperature')))
  const hottest = heat.indexOf(Math.max(...heat))
  let [kept, days, before] = [-Infinity, 0, -Infinity]
  return items.filter((_, index) => {
    const moment = moments[index]!
    // Past midnight a clock begins anew.
    if (moment < before) days += 1
    before = moment
    const since = moment + days * DAY_s
    const isDue = since - kept >= every_s
    if (isDue) kept = since
    return isDue || index === hottest || index === items.length - 1
  })
}
