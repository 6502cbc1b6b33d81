/** Waste and incidents that name lots: each must be recorded. */

import { type Problem, problemAt, quoted } from '../problem.ts'
import type { Incident, Records, Waste } from './types.ts'
import { suggestion } from './validate.ts'

/** Lots a record is about, and those it tells a loss of. */
const namedIn = ({ lots = [], lost = [] }: Waste | Incident) => [
  ...lots.map((lot, index) => ({ lot, field: ['lots', index] })),
  ...lost.map(({ lot }, index) => ({ lot, field: ['lost', index, 'lot'] }))
]

/** @param unread names whose records could not be read: their own problems say so */
export function upkeepReferences(content: Records, unread: ReadonlySet<string>): Problem[] {
  const { waste, incidents, materials, batches, expansions, foils } = content
  const lots = [materials, batches, expansions, foils].flatMap(map => [...map.keys()])
  const known = new Set(lots)
  return [...waste.values(), ...incidents.values()].flatMap(entry =>
    namedIn(entry.record).flatMap(({ lot, field }) =>
      known.has(lot) || unread.has(lot)
        ? []
        : [
            problemAt(
              entry.at(field),
              'UNKNOWN_REFERENCE',
              `there is no lot ${quoted(lot)}`,
              suggestion(lot, lots, 'each lot recorded')
            )
          ]
    )
  )
}
