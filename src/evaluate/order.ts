/** Lots in an order in which each comes after those it was made from. */

import { type Checked, type Problem, problemAt } from '../problem.ts'
import type { Records, Entry } from '../records/types.ts'

interface Made {
  readonly from?: readonly { readonly lot: string }[] | undefined
}

/** Batches, furnace runs and foil lots by number. */
const madeLots = (content: Records): ReadonlyMap<string, Entry<Made>> =>
  new Map<string, Entry<Made>>([...content.batches, ...content.expansions, ...content.foils])

/** Lot numbers in making order, or the circles that leave no such order. */
export function inMakingOrder(content: Records): Checked<string[]> {
  const lots = madeLots(content)
  const order: string[] = []
  const state = new Map<string, 'open' | 'done'>()
  const problems: Problem[] = []

  const visit = (lot: string, path: readonly string[]): void => {
    const entry = lots.get(lot)
    if (!entry || state.get(lot) === 'done') return
    state.set(lot, 'open')
    for (const [index, use] of (entry.record.from ?? []).entries())
      if (state.get(use.lot) === 'open')
        problems.push(circle(entry, index, [...path.slice(path.indexOf(use.lot)), use.lot]))
      else visit(use.lot, [...path, use.lot])
    state.set(lot, 'done')
    order.push(lot)
  }
  for (const lot of [...lots.keys()].sort()) visit(lot, [lot])
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: order, problems }
}

const circle = (entry: Entry<Made>, index: number, lots: readonly string[]): Problem =>
  problemAt(
    entry.at(['from', index, 'lot']),
    'LOT_CYCLE',
    `goes round in a circle: ${lots.join(' from ')}`,
    'a lot can only be made from lots that were there before it'
  )
