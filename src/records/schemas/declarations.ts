/** What a producer declares of a grade without a test on its lots. */

import { date, fields, list, maybe, text } from '../fields.ts'

/** A statement, what it rests on, and who made it, by function. */
const statement = { says: text(), basis: text(), on: date(), by: text() }

export const declarations = fields({
  origin: maybe(fields(statement)),
  'substances-of-concern': maybe(fields(statement)),
  others: maybe(list(fields({ about: text(), ...statement })))
})
