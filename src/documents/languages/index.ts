/**
 * The words of whole papers, by language. A language is a folder like `en/`; one that lacks a text does
 * not compile. It is taken up here and in `paperLanguages`.
 */

import type { PaperLanguage } from '../../records/schemas/common.ts'
import type { Catalogue } from './catalogue.ts'
import { de } from './de/index.ts'
import { en } from './en/index.ts'

export const catalogues: Readonly<Record<PaperLanguage, Catalogue>> = { en, de }
