/** What is said of foil as an article: who stated it, on what basis, and what would overturn it. */

import { clauses } from '../hazards/clauses.ts'
import { type ArticleStatement, statementOn } from '../judge/article.ts'
import { quantityOf } from '../quantities.ts'
import type { GradeView } from './lot-view.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'
import { unparted, unstopped } from './words.ts'

/** The statement, by the function of whoever made it: the name is the workshop's. */
export function articleText(
  { statement, basis, on, until, ...made }: ArticleStatement,
  { hazards, own }: Tongue = english
): string {
  const said = (text: string) => unstopped(own(text))
  const by = { function: own(made.function), on, until }
  return unparted(hazards.article(by, said(statement), said(basis)))
}

/** On a grade's page: the statement with its clause and conditions, or that there is none. */
export function articleNotes(grade: GradeView, day: string, tongue = english): string[] {
  if (grade.kind !== 'foil') return []
  const words = tongue.grade.article
  const statement = statementOn(grade, day)
  if (!statement) return [words.none(grade.article !== undefined)]
  return [
    words.taken(tongue.hazards.cited(clauses.article), articleText(statement, tongue)),
    conditionText(statement, tongue)
  ]
}

/** What would overturn it. */
function conditionText({ atMost = {} }: ArticleStatement, tongue: Tongue): string {
  const { grade, numbers } = tongue
  const limits = Object.entries(atMost).flatMap(([key, most]) => {
    const quantity = quantityOf(key)
    if (!quantity || !most) return []
    const title = numbers.inSentence(wordsOf(tongue, quantity).title)
    return [grade.article.atMost(title, numbers.number(most.written))]
  })
  return limits.length === 0 ? grade.article.noCondition : unparted(grade.article.condition(limits))
}
