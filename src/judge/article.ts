/** Whether a lot of foil stands as an article, by a competent person's statement and what was measured. */

import type { EvaluatedFoil } from '../evaluate/types.ts'
import { shown } from '../hazards/mixture.ts'
import { expand } from '../metrology/coverage.ts'
import { quantities, quantityOf, titleInSentence } from '../quantities.ts'
import type { Grade } from '../records/types.ts'

/** As everyone may read it: without the name behind the function. */
export type ArticleStatement = Omit<NonNullable<Grade['article']>, 'person'>

interface Stated {
  readonly article?: ArticleStatement | undefined
}

/** The statement of a grade as everyone may read it. */
export function openStatement({ article }: Pick<Grade, 'article'>): ArticleStatement | undefined {
  if (!article) return undefined
  const { person: _person, ...open } = article
  return open
}

/** The statement in force on a day; none where nobody made one, or not for that day. */
export const statementOn = ({ article }: Stated, day: string): ArticleStatement | undefined =>
  article && article.on <= day && day <= (article.until ?? day) ? article : undefined

/** What speaks against taking a lot as an article, a sentence each without a full stop. */
export function articleDoubts(
  lot: Pick<EvaluatedFoil, 'product'>,
  grade: Stated,
  day: string
): string[] {
  const statement = statementOn(grade, day)
  if (!statement)
    return [
      grade.article
        ? `the statement that it is an article is not in force on ${day}`
        : 'no competent person has stated that it is an article'
    ]
  return Object.entries(statement.atMost ?? {}).flatMap(([key, most]) => {
    const quantity = quantityOf(key)
    if (!quantity || !most) return []
    const title = titleInSentence(quantity)
    const found = lot.product[quantity]
    if (!found)
      return [`${title}, on which the statement that it is an article rests, was not measured`]
    const { estimate, below } = found
    // The stricter side: a limit within the uncertainty counts as passed.
    const upper = below ?? estimate.value + expand(estimate).U
    const { unit } = quantities[quantity]
    return upper > most.value
      ? [
          `${title} may be as high as ${shown(upper, most.value)} ${unit}, and it is stated to be an article up to ${most.written}`
        ]
      : []
  })
}
