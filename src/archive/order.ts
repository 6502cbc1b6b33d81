/** All lots in an order, each made once. */

import type { Figures } from './figures.ts'
import type { LotList } from './lots.ts'
import type { Sorting } from './query.ts'

/** Figures by the quantity's key, as far as they were loaded. */
export type Columns = ReadonlyMap<string, Figures>

/** Gives all rows of a list in an order, and keeps it. */
export function orderKeeper(list: LotList): (sort: Sorting, columns: Columns) => Uint32Array {
  const kept = new Map<string, { figures: Figures | undefined; rows: Uint32Array }>()
  return (sort, columns) => {
    const figures = columns.get(sort.by)
    const name = `${sort.by} ${sort.down}`
    const known = kept.get(name)
    if (known && known.figures === figures) return known.rows
    const rows = ordered(list, sort, figures)
    kept.set(name, { figures, rows })
    return rows
  }
}

/** Lots without the figure stand last, whichever way; equal ones stay newest first. */
function ordered(list: LotList, { by, down }: Sorting, figures: Figures | undefined): Uint32Array {
  const rows = Uint32Array.from({ length: list.count }, (_, row) => row)
  const way = down ? -1 : 1
  if (figures) {
    const { numbers } = figures
    return rows.sort((a, b) => {
      const [one, other] = [numbers[a]!, numbers[b]!]
      if (Number.isNaN(one) || Number.isNaN(other))
        return Number(Number.isNaN(one)) - Number(Number.isNaN(other)) || a - b
      return way * (one - other) || a - b
    })
  }
  // The list itself is newest first.
  const ranks = by === 'made' && down ? undefined : ranksBy(list, by)
  return ranks ? rows.sort((a, b) => way * (ranks[a]! - ranks[b]!) || a - b) : rows
}

function ranksBy(list: LotList, by: string): ArrayLike<number> | undefined {
  if (by === 'made') return rankedTexts(list.made)
  if (by === 'lot') return rankedTexts(list.lots)
  if (by !== 'grade' && by !== 'state' && by !== 'answer') return undefined
  const { words, codes } = list[by]
  const ranks = rankedTexts(words)
  return codes.map(code => ranks[code]!)
}

/** Each text's rank in the order of their signs, the same in every locale. */
function rankedTexts(texts: readonly string[]): Uint32Array {
  const ranks = new Uint32Array(texts.length)
  const order = [...new Set(texts)].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0))
  const rankOf = new Map(order.map((text, rank) => [text, rank]))
  texts.forEach((text, row) => (ranks[row] = rankOf.get(text)!))
  return ranks
}
