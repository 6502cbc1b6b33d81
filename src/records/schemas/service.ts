/** Tests of a grade of foil in service that a laboratory reports in words: no figure of a lot. */

import type * as z from 'zod'
import { date, fields, identifier, maybe, text, yesNo } from '../fields.ts'

const serviceReport = fields({
  /** What the report concludes, in one sentence without its full stop. */
  says: text(),
  /** By what procedure, on what, under which conditions. */
  method: text(),
  laboratory: text(),
  /** The laboratory agreed to be named; without it customers read 'an external laboratory'. */
  'name-public': maybe(yesNo()),
  report: identifier(),
  date: date()
})

export const serviceTests = fields({
  'fire-safe': maybe(serviceReport),
  oxygen: maybe(serviceReport)
})

export type ServiceTests = z.output<typeof serviceTests>
export type ServiceReport = z.output<typeof serviceReport>
