/** Files that readings were taken over from: which bytes, written when. */

import * as z from 'zod'
import { quoted } from '../../problem.ts'
import { fields, list, refuse, text } from '../fields.ts'

/** SHA-256 of a file, in hexadecimal as tools print it. */
export const sha256 = () =>
  z.string().superRefine((value, context) => {
    if (!/^[0-9a-f]{64}$/u.test(value))
      refuse(context, [], 'INVALID_VALUE', [
        `must be 64 digits and letters a to f, got ${quoted(value)}`,
        'copy it whole from what sha256sum prints of the file as received'
      ])
  })

/** A day, with the time where it is known: local, or of UTC with a Z. */
const moment = () =>
  z.string().superRefine((value, context) => {
    if (
      !/^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])(?: (?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d)?Z?)?$/u.test(
        value
      )
    )
      refuse(context, [], 'BAD_DATE', [
        `must be a day, with or without a time, got ${quoted(value)}`,
        'write it as 2026-03-14, 2026-03-14 15:09, or 2026-03-14 14:09Z for UTC'
      ])
  })

/** Private: names of files say who measured what and when. */
export const sources = () => list(fields({ file: text(), sha256: sha256(), written: moment() }))
