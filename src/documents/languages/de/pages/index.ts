/** The words that templates set around what documents say, in German. */

import * as archive from './archive.ts'
import * as certificates from './certificates.ts'
import * as choice from './choice.ts'
import * as chrome from './chrome.ts'
import * as grade from './grade.ts'
import * as lot from './lot.ts'
import { tables } from './tables.ts'
import type { pages as english } from '../../en/pages/index.ts'
import { date } from '../numbers.ts'

export const pages: typeof english = {
  sign: ',',
  languageNames: { en: 'Englisch', de: 'Deutsch' },
  ...chrome,
  ...archive,
  ...certificates,
  ...choice,
  ...grade,
  ...lot,
  tables,
  date,
  day: day => day.split('-').reverse().join('.'),
  plain: printed => printed.replaceAll('\u202f', '').replace(',', '.')
}
