/** A label's words by language: a language is one file here, and its column of the statements. */

import type { Language } from '../../hazards/statements.ts'
import { de } from './de.ts'
import { en } from './en.ts'
import { es } from './es.ts'
import { fr } from './fr.ts'
import { it } from './it.ts'
import type { LabelWords } from './types.ts'

export const labelWords: Readonly<Record<Language, LabelWords>> = { en, de, fr, es, it }

export const labelLanguages = ['en', 'de', 'fr', 'es', 'it'] as const satisfies readonly Language[]
