/** Records that hold something for each quantity. */

import * as z from 'zod'
import type { UnitName } from '../../metrology/units.ts'
import { quantities, type QuantityKey } from '../../quantities.ts'
import { once } from '../once.ts'

/** One optional entry for every quantity, by its key, in the quantity's unit. */
export function perQuantity<Schema extends z.ZodType>(entryIn: (unit: UnitName) => Schema) {
  const entry = once((unit: UnitName) => entryIn(unit).optional())
  return z.strictObject(
    Object.fromEntries(
      Object.values(quantities).map(({ key, unit }) => [key, entry(unit)])
    ) as Record<QuantityKey, z.ZodOptional<Schema>>
  )
}
