/** A lot against the limits that one customer sets beyond those of its grade. */

import { type Problem, problemAt } from '../problem.ts'
import { quantities, quantityNames, titleInSentence } from '../quantities.ts'
import type { Entry, Shipment } from '../records/types.ts'
import { boundsOf, judgeScope } from './judge-lot.ts'
import type { JudgedLot, JudgedRow } from './types.ts'

export type ShippedLot = Shipment['contents'][number]

/** Every quantity a customer limits, judged by the customer's limit. */
export function judgeForCustomer(lot: JudgedLot, part: ShippedLot): JudgedRow[] {
  const rule = part.decisionRule ?? lot.rule
  const { product } = lot.evaluated
  return quantityNames.flatMap((quantity): JudgedRow[] => {
    const limit = part.limits?.[quantities[quantity].key]
    if (!limit) return []
    const result = product[quantity]
    const bounds = boundsOf(limit)
    const scope = limit.of ?? 'lot mean'
    const places = limit.places ?? lot.rows.find(row => row.quantity === quantity)?.places
    return [
      {
        quantity,
        scope,
        limit,
        bounds,
        ...(places === undefined ? {} : { places }),
        ...(result ? { result, ...judgeScope(result, bounds, scope, rule) } : {})
      }
    ]
  })
}

/** Limits of the customer that a lot sent does not meet, unless the customer took it all the same. */
export function checkCustomerLimits(
  entry: Entry<Shipment>,
  index: number,
  lot: JudgedLot
): Problem[] {
  const part = entry.record.contents[index]!
  const isAccepted = part.accepted !== undefined && part.accepted.on <= entry.record.sent
  if (!part.limits || isAccepted) return []
  return judgeForCustomer(lot, part).flatMap(row => {
    const why = reasonAgainst(row)
    const place = ['contents', index, 'limits', quantities[row.quantity].key]
    return why === undefined
      ? []
      : [
          problemAt(
            entry.at(place),
            'NOT_SHIPPABLE',
            `${part.lot} was sent against a limit of this customer: ${why}`,
            "send another lot, or record under 'accepted:' who at the customer takes it, since when and why"
          )
        ]
  })
}

function reasonAgainst({ quantity, result, verdict }: JudgedRow): string | undefined {
  const title = titleInSentence(quantity)
  if (!result) return `${title} was not measured`
  return verdict?.word === 'pass' || verdict?.word === 'conditional pass'
    ? undefined
    : `the verdict on ${title} is ${verdict?.word ?? 'not decidable'}`
}
