/** A statement of working: how every figure of a lot came about, on paper. */

import type { PaperLanguage } from '../records/schemas/common.ts'
import type { Fact, ProducerText } from './text-types.ts'
import type { Working } from './working-types.ts'

export interface StatementDocument {
  readonly title: string
  readonly lot: string
  readonly dated: string
  readonly language: PaperLanguage
  readonly paper: 'A4' | 'Letter'
  readonly producer: ProducerText
  readonly facts: readonly Fact[]
  readonly workings: readonly Working[]
  /** Of the process: in the workshop's own edition alone. */
  readonly process: readonly Working[]
  /** Across each page of one that is not for customers. */
  readonly mark?: string
  /** What the document is and is not. */
  readonly statements: readonly string[]
}
