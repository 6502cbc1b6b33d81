/** One word for a certificate that someone holds, and the sentences that give the reasons. */

import { checkWords, type Said, type SaidKey, sayIn } from './words.ts'

export type Word = 'genuine' | 'superseded' | 'withdrawn' | 'altered' | 'unknown'

/** One thing found, and the word it calls for; none where it only adds to what is known. */
export interface Finding {
  readonly word?: Word
  readonly sentence: string
  /** The same as sentences that any language words. */
  readonly says: readonly Said[]
}

export interface Answer {
  readonly word: Word
  readonly sentences: readonly string[]
  /** The same, finding by finding, as each language words it. */
  readonly says: readonly (readonly Said[])[]
}

/** A sentence without a word of its own. */
export const said = (is: SaidKey, parts: Said['parts'] = {}): Said => ({ is, parts })

/** What was found, in sentences that follow each other. */
export const finding = (word: Word | undefined, ...says: readonly Said[]): Finding => ({
  ...(word ? { word } : {}),
  sentence: says.map(one => sayIn(checkWords, one)).join(' '),
  says
})

/** Words by what outweighs what. */
const weights: Readonly<Record<Word, number>> = {
  altered: 4,
  unknown: 3,
  withdrawn: 2,
  superseded: 1,
  genuine: 0
}

/** The gravest word of all findings; genuine only where none calls for another. */
export function answerOf(findings: readonly Finding[]): Answer {
  const words = findings.flatMap(({ word }) => word ?? [])
  const word = words.reduce<Word>(
    (gravest, one) => (weights[one] > weights[gravest] ? one : gravest),
    'genuine'
  )
  return {
    word,
    sentences: findings.map(({ sentence }) => sentence),
    says: findings.map(({ says }) => says)
  }
}
