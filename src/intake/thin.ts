/** A log of thousands of lines to those a record should hold. */

import type { Item } from './items.ts'
import { momentOf } from '../metrology/moments.ts'

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
  const moments = items.map(item => momentOf(textOf(item, 'at'))?.seconds)
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
