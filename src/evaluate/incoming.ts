/** Incoming lots: what suppliers state of them beside what was found here. */

import { type Problem, problemAt } from '../problem.ts'
import { quantityNames, quantities, type QuantityName, titleInSentence } from '../quantities.ts'
import type { Compared } from '../records/schemas/incoming.ts'
import type { Entry, Material, Records } from '../records/types.ts'

/** One quantity of an incoming lot by two hands. */
export interface SideBySide {
  readonly quantity: QuantityName
  readonly compared: Compared
  /** Absent where nothing was found here. */
  readonly differs?: boolean
}

/** Every quantity of a lot that its supplier states and the workshop may hold it to. */
export const sideBySide = ({ compared }: Material): SideBySide[] =>
  quantityNames.flatMap((quantity): SideBySide[] => {
    const one = compared?.[quantities[quantity].key]
    if (!one) return []
    return [{ quantity, compared: one, ...(one.own ? { differs: differs(one) } : {}) }]
  })

/** Further apart than the own uncertainty and the supplier's last digit explain. */
function differs({ stated, own, expandedUncertainty }: Compared): boolean {
  if (!own) return false
  const room = (expandedUncertainty?.value ?? own.resolution) + stated.resolution
  // Sums of decimals miss by less than this.
  return Math.abs(own.value - stated.value) > room * (1 + 1e-9)
}

/** A warning for each figure that a supplier states otherwise than it was found. */
export const doubtSuppliers = ({ materials }: Records): Problem[] =>
  [...materials.values()].flatMap(doubtSupplier)

const doubtSupplier = (entry: Entry<Material>): Problem[] => [
  ...testedEarly(entry),
  ...disagreeing(entry)
]

function testedEarly({ record, at }: Entry<Material>): Problem[] {
  const { received } = record
  return sideBySide(record).flatMap(({ quantity, compared: { on = received } }) =>
    on < received
      ? [
          problemAt(
            at(['compared', quantities[quantity].key, 'on']),
            'DATE_ORDER',
            `was tested on ${on}, before the lot was received on ${received}`,
            'check the two dates'
          )
        ]
      : []
  )
}

const disagreeing = ({ record, at }: Entry<Material>): Problem[] =>
  sideBySide(record).flatMap(({ quantity, compared, differs: isOff }) =>
    isOff
      ? [
          problemAt(
            at(['compared', quantities[quantity].key, 'own']),
            'CONTRADICTION',
            `${titleInSentence(quantity)} is ${compared.own!.written} as found here and ${compared.stated.written} by the supplier`,
            'test again; if it stays so, ask the supplier, and reckon with the own figure'
          )
        ]
      : []
  )
