/** The words of the paper itself, by language; everything else comes worded in the document. */

import { catalogues } from '../documents/languages/index.ts'
import type { PaperWords } from '../documents/languages/paper-words.ts'
import type { CertificateDocument } from '../documents/types.ts'

export type Words = PaperWords

/** The words of a language. */
export const wordsIn = (language: CertificateDocument['language']): Words =>
  catalogues[language].paper
