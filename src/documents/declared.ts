/** What a producer declares of a grade, or that it declares nothing. */

import type { DeclaredText } from './grade-types.ts'
import type { GradeView } from './lot-view.ts'
import { dateText, unparted } from './words.ts'

interface Statement {
  readonly says: string
  readonly basis: string
  readonly on: string
  readonly by: string
}

/** Asked of every grade: silence on these is told. */
const ALWAYS = ['Origin', 'Substances of concern'] as const

/** Statements made by a day, with what they rest on and who made them, by function. */
export function declaredOn({ declared = {} }: GradeView, day: string): DeclaredText[] {
  const { origin, substancesOfConcern, others = [] } = declared
  const own = [origin, substancesOfConcern]
  return [
    ...ALWAYS.map((about, index) => statementText(about, own[index], day)),
    ...others
      .map(({ about, ...one }) => statementText(about, one, day))
      .filter(({ basis }) => basis)
  ]
}

function statementText(about: string, one: Statement | undefined, day: string): DeclaredText {
  if (!one || one.on > day) return { about, says: 'Nothing is declared.' }
  return {
    about,
    says: sentence(one.says),
    basis: `Basis: ${unparted(one.basis).replace(/\.$/u, '')}. Declared on ${dateText(one.on)} by the ${one.by}.`
  }
}

const sentence = (text: string): string => {
  const plain = unparted(text).replace(/\.$/u, '')
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}.`
}
