/** Waste and incidents that name lots: each must be recorded. */

import { type Problem, problemAt, quoted } from '../problem.ts'
import type { Records } from './types.ts'
import { suggestion } from './validate.ts'

/** @param unread names whose records could not be read: their own problems say so */
export function upkeepReferences(content: Records, unread: ReadonlySet<string>): Problem[] {
  const { waste, incidents, materials, batches, expansions, foils } = content
  const lots = [materials, batches, expansions, foils].flatMap(map => [...map.keys()])
  const known = new Set(lots)
  return [...waste.values(), ...incidents.values()].flatMap(entry =>
    (entry.record.lots ?? []).flatMap((lot, index) =>
      known.has(lot) || unread.has(lot)
        ? []
        : [
            problemAt(
              entry.at(['lots', index]),
              'UNKNOWN_REFERENCE',
              `there is no lot ${quoted(lot)}`,
              suggestion(lot, lots, 'each lot recorded')
            )
          ]
    )
  )
}
