/** An incoming lot tested here: what its supplier states, and what the workshop found. */

import type * as z from 'zod'
import type { UnitName } from '../../metrology/units.ts'
import { amount, date, fields, maybe, refuse, text } from '../fields.ts'
import { perQuantity } from './per-quantity.ts'

const comparedIn = (unit: UnitName) =>
  fields({
    stated: amount(unit),
    own: maybe(amount(unit)),
    /** Of the own figure; one step of both figures where nothing is said. */
    'expanded-uncertainty': maybe(amount(unit, 'above 0')),
    on: maybe(date()),
    how: maybe(text())
  }).superRefine(({ own, on, expandedUncertainty }, context) => {
    if (own && on === undefined)
      refuse(context, ['on'], 'MISSING_FIELD', [
        'is missing: the lot was tested on some day',
        "add 'on: 2026-03-14'"
      ])
    if (!own && (on ?? expandedUncertainty) !== undefined)
      refuse(context, [on === undefined ? 'expandedUncertainty' : 'on'], 'INVALID_VALUE', [
        'is of an own figure, and there is none',
        "add 'own:', or take it out"
      ])
  })

/** One entry for each quantity that the supplier states and the workshop holds it to. */
export const comparedWithSupplier = perQuantity(comparedIn)

export type Compared = z.output<ReturnType<typeof comparedIn>>
