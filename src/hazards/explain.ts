/** Reasons as sentences. */

import type { Classified, Conflict } from './classify.ts'
import { cited } from './clauses.ts'
import type { Finding, Reason } from './mixture.ts'

/** A reason with its clauses: 'nitric acid 60 %: …. CLP Annex I, …; CLP Annex VI Table 3, …'. */
export function explain({ text, clauses }: Reason): string {
  const sources = [...new Set(clauses.map(cited))]
  return `${capital(text)}. ${sources.join('; ')}.`
}

/** Why a class applies: a sentence for each reason, and one where a limit is within the uncertainty. */
export const explainClass = ({ reasons, margin }: Classified): string[] => [
  ...reasons.map(explain),
  ...(margin === undefined
    ? []
    : [
        `A limit lies within the uncertainty of what was measured: ${margin}; the stricter side holds.`
      ])
]

/** The same as a sentence. */
export const explainConflict = (conflict: Conflict): string => `${capital(sidesOf(conflict))}.`

/** Both sides of a disagreement, each with its clause: without a capital and a full stop. */
export function sidesOf({ byLimits, byPH, settled }: Conflict): string {
  const limits = byLimits ? `${byLimits.class}: ${sides(byLimits)}` : 'no class of the skin'
  const outcome =
    settled === undefined
      ? 'the stricter holds until a competent person records a decision'
      : settled === 'limits'
        ? 'decided for the concentration limits'
        : 'decided for the pH'
  return `concentration limits give ${limits}; the pH gives ${byPH.class}: ${sides(byPH)}; ${outcome}`
}

const sides = ({ reasons }: Finding) =>
  reasons.map(({ text, clauses }) => `${text} (${clauses.map(cited).join('; ')})`).join('; ')

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
