/** What a grade declares of its hazards: its class, and what its papers say of it. */

import * as z from 'zod'
import { date, fields, list, maybe, refuse, text } from '../fields.ts'
import { hazardEditions, hazardLanguages } from './common.ts'
import { fillsByLanguage } from './container.ts'

/** What a dangerous-goods safety adviser decided; readers learn the function, never the name. */
const transportDecision = fields({
  decision: text(),
  basis: text(),
  adviser: text(),
  function: text(),
  on: date(),
  until: date()
}).superRefine(({ on, until }, context) => {
  if (until > on) return
  refuse(context, ['until'], 'DATE_ORDER', [
    `is valid until ${until}, which is not after ${on}`,
    'check the two dates'
  ])
})

export const gradeHazards = fields({
  /** The producer's own classification, class by class; 'not classified' alone where none. */
  classified: list(text()),
  /** Role that answers for it: needed where lots are computed milder. Why is told under `basis`. */
  'classified-by': maybe(text()),
  /** Precautionary statements, where the producer chose others than the program. */
  precautions: maybe(list(text())),
  /** Who chose them, by role, and why; needed where they are more than six. */
  'precautions-by': maybe(text()),
  'precautions-because': maybe(text()),
  /** The supplier's words for gaps the law leaves in a statement, by code. */
  fill: maybe(z.record(text(), text())),
  /** The same in other languages. */
  'fill-in-languages': maybe(fillsByLanguage),
  basis: text(),
  /** What a dust test showed. */
  dust: maybe(z.enum(['combustible', 'not combustible'])),
  /** Where this grade's papers carry others than the producer's. */
  editions: maybe(list(z.enum(hazardEditions))),
  languages: maybe(list(z.enum(hazardLanguages))),
  transport: maybe(transportDecision)
}).superRefine(({ precautionsBy: by, precautionsBecause: because, precautions }, context) => {
  if ((by === undefined) !== (because === undefined))
    refuse(context, [by === undefined ? 'precautionsBy' : 'precautionsBecause'], 'MISSING_FIELD', [
      'is missing: a choice of precautions is recorded with who made it and why',
      "write 'precautions-by:' with a role, and 'precautions-because:'"
    ])
  if (by === undefined || precautions) return
  refuse(context, ['precautionsBy'], 'INVALID_VALUE', [
    'tells who chose precautions, and none are listed',
    "add 'precautions:', or take it out"
  ])
})
