/** What a customer said of goods sent, what came back, and what was decided on it. */

import * as z from 'zod'
import { date, fields, identifier, list, maybe, quantity, text } from '../fields.ts'

/** What becomes of goods that came back; those without a decision stay in quarantine. */
const returnDecision = fields({
  is: z.enum(['restocked', 'scrapped']),
  on: date(),
  by: text(),
  because: maybe(text())
})

const returnedPart = fields({
  on: date(),
  /** By its number, where whole containers came back. */
  container: maybe(identifier()),
  mass: quantity('g', 'above 0'),
  decision: maybe(returnDecision)
})

/**
 * A complaint about one lot of one shipment, or goods sent back without one. Private throughout: what
 * the public must know of a lot is in the decisions on the lot.
 */
export const complaintRecord = fields({
  number: identifier(),
  shipment: identifier(),
  lot: identifier(),
  received: date(),
  reported: text(),
  by: maybe(text()),
  told: maybe(list(fields({ who: text(), on: date(), what: maybe(text()) }))),
  returned: maybe(list(returnedPart)),
  decision: maybe(
    fields({ is: z.enum(['accepted', 'not accepted']), on: date(), by: text(), because: text() })
  ),
  notes: maybe(text())
})
