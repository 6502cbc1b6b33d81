/** Tests repeated on a lot in store, once it is older than its grade trusts it to be. */

import * as z from 'zod'
import type { UnitName } from '../../metrology/units.ts'
import { amount, date, fields, list, maybe } from '../fields.ts'
import { person } from './common.ts'
import { perQuantity } from './per-quantity.ts'

/** A figure with its expanded uncertainty, for which the coverage probability is about 95 %. */
const figureIn = (unit: UnitName) =>
  fields({ value: amount(unit), 'expanded-uncertainty': maybe(amount(unit, 'above 0')) })

export const retests = list(
  fields({
    on: date(),
    by: maybe(person()),
    results: perQuantity(figureIn)
  })
)

export type Retest = z.output<typeof retests>[number]
