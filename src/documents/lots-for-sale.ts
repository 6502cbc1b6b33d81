/** Which lots are for sale, and what an edition tells of their stock. */

import type { JudgedLot } from '../judge/types.ts'
import { compareText } from '../problem.ts'
import { versionOn } from '../records/references.ts'
import type { Content } from '../records/types.ts'
import { balanceOf } from '../trace/balance.ts'
import { openGraph, type TraceGraph } from '../trace/graph.ts'
import { groupedBy } from './grouped.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { massText } from './substances.ts'

export interface LotForSale {
  readonly lot: string
  /** '' where none is left; absent where an edition does not tell. */
  readonly stock?: string
}

interface SaleInputs {
  readonly content: Content
  /** Those that customers may see. */
  readonly lots: readonly JudgedLot[]
  readonly asOf: string
  /** Where every gram is, which the workshop's edition alone has at hand. */
  readonly graph: TraceGraph | undefined
  readonly tongue?: Tongue
}

/**
 * The released lots of each grade as it is sold, the latest first. The workshop reads how much of a lot
 * is left. Customers read that there is some, and that only where the grade says that its stock may be
 * shown: how fast a lot goes is the producer's business.
 */
export function lotsForSale({
  content,
  lots,
  asOf,
  graph: whole,
  tongue = english
}: SaleInputs): (grade: string) => LotForSale[] {
  const released = groupedBy(
    lots.filter(({ state }) => state === 'released').sort(latestFirst),
    ({ grade }) => grade.id
  )
  // By the revision in force today, whichever one the lot was made to.
  const isShown = (grade: string) =>
    versionOn(content.grades.get(grade), asOf)?.record.showStock === true
  // Stock takes every record: it is worked out only where somebody is to read it.
  const graph = whole ?? ([...released.keys()].some(isShown) ? openGraph(content, asOf) : undefined)
  const stockOf = (lot: string): Pick<LotForSale, 'stock'> => {
    const traced = graph?.lots.get(lot)
    if (!graph || !traced) return {}
    const { inStock_g } = balanceOf(graph, traced)
    if (!inStock_g.greaterThan(0)) return { stock: '' }
    return { stock: whole ? massText(inStock_g) : tongue.series.inStock }
  }
  return grade =>
    (released.get(grade) ?? []).map(({ evaluated: { lot } }) => ({
      lot,
      ...(whole || isShown(grade) ? stockOf(lot) : {})
    }))
}

const latestFirst = ({ evaluated: a }: JudgedLot, { evaluated: b }: JudgedLot): number =>
  compareText(b.entry.record.made, a.entry.record.made) || compareText(b.lot, a.lot)
