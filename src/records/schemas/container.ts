/** What a grade is sold in, and how it is kept: what its labels need beside its hazards. */

import * as z from 'zod'
import { condition, fields, maybe, quantity, text, yesNo } from '../fields.ts'

export const containerKinds = ['drum', 'pail', 'pouch', 'carton'] as const

/** A package, by what it could hold and what it is filled with. */
export const container = fields({
  kind: z.enum(containerKinds),
  capacity: quantity('L', 'above 0'),
  holds: quantity('g', 'above 0')
})

/** Storage in a form that labels can say in any language. */
export const keeping = fields({
  dry: maybe(yesNo()),
  below: maybe(condition('storage temperature'))
})

/** The supplier's words for gaps in statements, by language and code. */
export const fillsByLanguage = z.partialRecord(
  z.enum(['de', 'fr', 'es', 'it']),
  z.record(text(), text())
)
