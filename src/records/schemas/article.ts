/** The statement that a product is an article: a competent person's, with basis, day and conditions. */

import * as z from 'zod'
import { amount, date, fields, list, maybe, refuse, text } from '../fields.ts'
import { perQuantity } from './per-quantity.ts'

/** Readers learn the function of who stated it, never the name. */
export const articleStatement = fields({
  /** Why: what decides its function more than its composition does. */
  statement: text(),
  basis: text(),
  person: text(),
  function: text(),
  on: date(),
  until: maybe(date()),
  /** What would overturn it: figures of a lot that must not lie above these. */
  'at-most': maybe(perQuantity(unit => amount(unit)))
}).superRefine(({ on, until }, context) => {
  if (until === undefined || until > on) return
  refuse(context, ['until'], 'DATE_ORDER', [
    `is valid until ${until}, which is not after ${on}`,
    'check the two dates'
  ])
})

/** Why a lot of foil is let go though something of the statement is open. The reason is public. */
export const articleDecisions = fields({
  decisions: list(fields({ about: z.enum(['article']), by: text(), on: date(), because: text() }))
})
