/** What a producer declares of a grade, or that it declares nothing. */

import { capital } from './capital.ts'
import type { DeclaredText } from './grade-types.ts'
import type { GradeView } from './lot-view.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { unparted, unstopped } from './words.ts'

interface Statement {
  readonly says: string
  readonly basis: string
  readonly on: string
  readonly by: string
}

/** Statements made by a day, with what they rest on and who made them, by function. */
export function declaredOn(
  { declared = {} }: GradeView,
  day: string,
  tongue = english
): DeclaredText[] {
  const { origin, substancesOfConcern, others = [] } = declared
  const words = tongue.grade.declared
  // Asked of every grade: silence on the first two is told.
  return [
    statementText(words.origin, origin, day, tongue),
    statementText(words.substances, substancesOfConcern, day, tongue),
    ...others
      .filter(({ on }) => on <= day)
      .map(({ about, ...one }) => statementText(tongue.own(about), one, day, tongue))
  ]
}

function statementText(
  about: string,
  one: Statement | undefined,
  day: string,
  { grade: { declared: words }, own }: Tongue
): DeclaredText {
  if (!one || one.on > day) return { about, says: words.nothing }
  return {
    about,
    says: sentence(own(one.says)),
    basis: words.basis(unstopped(unparted(own(one.basis))), one.on, own(one.by))
  }
}

const sentence = (text: string): string => {
  const plain = unparted(text).replace(/\.$/u, '')
  return `${capital(plain)}.`
}
