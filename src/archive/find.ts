/** Which lots a query finds, and in what order: a plain scan, which takes a millisecond. */

import { closenesses, closenessIn } from './closeness.ts'
import type { Figures } from './figures.ts'
import { type LotList, type Words } from './lots.ts'
import { type Columns, orderKeeper } from './order.ts'
import { boundOf, type Query } from './query.ts'

export type { Columns } from './order.ts'

/** Looks through one list of lots again and again. */
export interface Finder {
  /** Rows found, closest first, then as sorted. */
  find(query: Query, columns: Columns): Uint32Array
}

export function finderOf(list: LotList): Finder {
  const closenessTo = closenessIn(list)
  const orders = orderKeeper(list)
  return {
    find({ text, grade, year, state, ranges, sort }, columns) {
      const closeness = closenessTo(text)
      const filters = [
        closeness && ((row: number) => closeness[row] !== closenesses.none),
        wordFilter(list.grade, grade),
        wordFilter(list.state, state),
        year === '' ? undefined : (row: number) => list.made[row]!.startsWith(year),
        ...[...ranges].map(([key, { from, to }]) =>
          rangeFilter(columns.get(key), boundOf(from), boundOf(to))
        )
      ].filter(filter => filter !== undefined)
      const found = passing(orders(sort, columns), filters)
      return closeness ? closestFirst(found, closeness) : found
    }
  }
}

type Filter = (row: number) => boolean

/** Rows that pass every filter; a loop by hand takes a tenth of the time of the array's own. */
function passing(rows: Uint32Array, filters: readonly Filter[]): Uint32Array {
  const found = new Uint32Array(rows.length)
  let count = 0
  next: for (const row of rows) {
    for (const filter of filters) if (!filter(row)) continue next
    found[count++] = row
  }
  return found.subarray(0, count)
}

function wordFilter({ words, codes }: Words, word: string): Filter | undefined {
  if (word === '') return undefined
  const code = words.indexOf(word)
  return row => codes[row] === code
}

/**
 * Figures are taken as printed, so that nobody finds 1.05 left out of 'at most 1.05'. One that is only
 * known to be below a bound is at most that, and at least nothing.
 */
function rangeFilter(
  figures: Figures | undefined,
  from: number | undefined,
  to: number | undefined
): Filter | undefined {
  if (from === undefined && to === undefined) return undefined
  if (!figures) return () => false
  const { numbers, below } = figures
  return row => {
    const number = numbers[row]!
    if (from !== undefined && !(below[row] === 0 && number >= from)) return false
    return to === undefined ? !Number.isNaN(number) : number <= to
  }
}

/** The same rows, each closeness apart, in the order they came. */
function closestFirst(rows: Uint32Array, closeness: Uint8Array): Uint32Array {
  // Where the rows of each closeness begin: counted first, then each row has its place.
  const next = new Uint32Array(closenesses.none + 1)
  for (const row of rows) next[closeness[row]! + 1]! += 1
  for (let at = 1; at < next.length; at += 1) next[at]! += next[at - 1]!
  const sorted = new Uint32Array(rows.length)
  for (const row of rows) sorted[next[closeness[row]!]!++] = row
  return sorted
}
