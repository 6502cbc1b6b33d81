/** The records' own texts in another language: one file a language. */

import * as z from 'zod'
import { quoted } from '../../problem.ts'
import { fields, list, refuse, text } from '../fields.ts'
import { paperLanguages } from './common.ts'

export const translationsRecord = fields({
  language: z.enum(paperLanguages),
  /** Each text as a record has it, whole, and what it is in the language. */
  texts: list(fields({ text: text(), as: text() }))
}).superRefine(({ texts }, context) => {
  const seen = new Set<string>()
  for (const [index, { text: said }] of texts.entries()) {
    if (seen.has(said))
      refuse(context, ['texts', index, 'text'], 'INVALID_VALUE', [
        `${quoted(said)} is translated twice`,
        'keep one of the two'
      ])
    seen.add(said)
  }
})
