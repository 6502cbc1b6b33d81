/** What is said of foil as an article: who stated it, on what basis, and what would overturn it. */

import { cited, clauses } from '../hazards/clauses.ts'
import { type ArticleStatement, statementOn } from '../judge/article.ts'
import { quantityOf, titleInSentence } from '../quantities.ts'
import type { GradeView } from './lot-view.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { listText, unparted, unstopped } from './words.ts'

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
export function articleNotes(grade: GradeView, day: string): string[] {
  if (grade.kind !== 'foil') return []
  const statement = statementOn(grade, day)
  if (!statement)
    return [
      `No competent person’s statement that this foil is an article is ${grade.article ? 'in force' : 'recorded'}: whether it has to be classified and labelled as a mixture is open.`
    ]
  return [
    `Taken as an article, outside the rules that classify substances and mixtures (${cited(clauses.article)}). ${articleText(statement)}`,
    conditionText(statement)
  ]
}

/** What would overturn it. */
function conditionText({ atMost = {} }: ArticleStatement): string {
  const limits = Object.entries(atMost).flatMap(([key, most]) => {
    const quantity = quantityOf(key)
    return quantity && most ? [`${titleInSentence(quantity)} at most ${most.written}`] : []
  })
  return limits.length === 0
    ? 'What water leaches out of it, or acid left in it, may overturn this: the statement names no limit for either.'
    : unparted(
        `It holds while what leaches out stays low, which each lot is held to: ${listText(limits)}.`
      )
}
