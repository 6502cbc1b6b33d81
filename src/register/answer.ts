/** One word for a certificate that someone holds, and the sentences that give the reasons. */

export type Word = 'genuine' | 'superseded' | 'withdrawn' | 'altered' | 'unknown'

/** One thing found, and the word it calls for; none where it only adds to what is known. */
export interface Finding {
  readonly word?: Word
  readonly sentence: string
}

export interface Answer {
  readonly word: Word
  readonly sentences: readonly string[]
}

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
  return { word, sentences: findings.map(({ sentence }) => sentence) }
}
