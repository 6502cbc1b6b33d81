/** A grade: what is promised of a lot, how it is judged, and what is said with it. */

import { z } from 'zod'
import { date, fields, identifier, list, maybe, text, whole, yesNo } from '../fields.ts'
import { quantityKeys } from './common.ts'

/** What a limit holds for. Flake is judged by the lot mean alone. */
export const scopes = ['lot mean', 'every sheet', 'every reading'] as const

/** Limits are texts here: their written digits decide how a figure is rounded and judged. */
export const limit = fields({
  min: maybe(text()),
  max: maybe(text()),
  target: maybe(text()),
  tolerance: maybe(text()),
  of: maybe(z.enum(scopes)),
  method: maybe(identifier()),
  required: maybe(yesNo())
})

export const decisionRules = ['simple', 'guarded'] as const

/** Sections of a lot page that customers may see; whatever is not named here stays private. */
export const publicSections = ['results', 'working', 'chain', 'sampling'] as const

export const gradeRecord = fields({
  id: identifier(),
  revision: whole(1),
  'valid-from': date(),
  title: text(),
  kind: z.enum(['flake', 'foil']),
  description: text(),
  'decision-rule': maybe(z.enum(decisionRules)),
  limits: z.partialRecord(z.enum(quantityKeys), limit),
  measured: maybe(z.partialRecord(z.enum(quantityKeys), fields({ method: maybe(identifier()) }))),
  typical: maybe(z.partialRecord(z.enum(quantityKeys), text())),
  'not-measured': maybe(list(text())),
  public: maybe(list(z.enum(publicSections))),
  packing: maybe(text()),
  storage: maybe(text()),
  hazards: maybe(
    fields({
      signal: maybe(z.enum(['Danger', 'Warning'])),
      statements: list(text()),
      basis: text()
    })
  ),
  cautions: maybe(list(text()))
})
