/** A sheet to take to the bench: what to weigh, log, read and have ready. */

import type { Fact, ProducerText } from './types.ts'

export interface BenchSheet {
  readonly title: string
  readonly lot: string
  readonly language: 'en'
  readonly paper: 'A4' | 'Letter'
  readonly dated: string
  readonly producer: ProducerText
  readonly facts: readonly Fact[]
  readonly amounts: readonly {
    readonly as: string
    readonly what: string
    readonly lot: string
    readonly planned: string
  }[]
  readonly steps: readonly string[]
  readonly readings: readonly { readonly what: string; readonly how: string }[]
  readonly ready: readonly string[]
  readonly cautions: readonly { readonly heading: string; readonly texts: readonly string[] }[]
  readonly statements: readonly string[]
  readonly signatures: readonly string[]
  /** Where the record lies, as the code says it. */
  readonly record: string
}
