/** The words that templates set around what documents say, in English. */

import * as archive from './archive.ts'
import * as certificates from './certificates.ts'
import * as choice from './choice.ts'
import * as chrome from './chrome.ts'
import * as grade from './grade.ts'
import * as lot from './lot.ts'
import { tables } from './tables.ts'
import type { PaperLanguage } from '../../../../records/schemas/common.ts'
import { date } from '../numbers.ts'

export const pages = {
  /** Before decimals. */
  sign: '.' as '.' | ',',
  /** Of papers and pages in other languages. */
  languageNames: { en: 'English', de: 'German' } satisfies Record<PaperLanguage, string>,
  ...chrome,
  ...archive,
  ...certificates,
  ...choice,
  ...grade,
  ...lot,
  tables,
  /** A day in a sentence. */
  date,
  /** A day as lists show it, in a column of days. */
  day: (day: string) => day,
  /** A printed figure as programs read it: digits with a point. */
  plain: (printed: string) => printed
}
