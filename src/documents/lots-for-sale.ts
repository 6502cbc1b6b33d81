/** Which lots are for sale, and what an edition tells of their stock. */

import type { EvaluatedContent } from '../evaluate/types.ts'
import type { JudgedLot } from '../judge/types.ts'
import { versionOn } from '../records/references.ts'
import type { Content } from '../records/types.ts'
import { balanceOf } from '../trace/balance.ts'
import { openGraph } from '../trace/graph.ts'
import type { ChoiceInputs } from './choice.ts'
import { massText } from './substances.ts'

interface SaleInputs {
  readonly evaluated: EvaluatedContent
  readonly lots: readonly JudgedLot[]
  readonly edition: 'public' | 'workshop'
  readonly asOf: string
}

/**
 * The workshop reads how much of a lot is left. Customers read that there is some, and that only
 * where the grade says that its stock may be shown: how fast a lot goes is the producer's business.
 */
export function lotsForSale(
  { lots, edition, asOf }: SaleInputs,
  content: Content
): Pick<ChoiceInputs, 'isReleased' | 'stockOf'> {
  const byName = new Map(lots.map(lot => [lot.evaluated.lot, lot]))
  // By the revision in force today, whichever one the lot was made to.
  const showsStock = (grade: string) =>
    versionOn(content.grades.get(grade), asOf)?.record.showStock === true
  const isTold = (lot: string) =>
    edition === 'workshop' || showsStock(byName.get(lot)?.grade.id ?? '')
  // Stock takes every record: it is worked out only where somebody is to read it.
  const graph = lots.some(({ evaluated: { lot } }) => isTold(lot))
    ? openGraph(content, asOf)
    : undefined
  return {
    isReleased: lot => byName.get(lot)?.state === 'released',
    stockOf(lot) {
      const traced = isTold(lot) ? graph?.lots.get(lot) : undefined
      if (!graph || !traced) return undefined
      const { inStock_g } = balanceOf(graph, traced)
      if (!inStock_g.greaterThan(0)) return ''
      return edition === 'workshop' ? massText(inStock_g) : 'in stock'
    }
  }
}
