/**
 * Supplemental statements (EUH) that ingredients bring.
 *
 * Source: CLP Annex II, 1.2.6 (EUH071) and 1.1.3 (EUH014) (numbers from memory, not checked against
 * the print).
 */

import { isCorrosive } from './findings.ts'
import { type Finding, nameOf, type Point, shown } from './mixture.ts'

export interface Supplement {
  readonly code: string
  readonly because: string
}

/** A mixture behaves as a substance does in it from here on. */
const AS_SUCH_PERCENT = 99

/**
 * EUH071 where the mixture is corrosive and toxic by inhalation, and an ingredient is known to corrode
 * the airways; others where the mixture is the substance itself.
 */
export function supplementsOf({ shares }: Point, found: readonly Finding[]): Supplement[] {
  const corrodes =
    found.some(isCorrosive) && found.some(({ class: name }) => /^Acute.*inhalation$/u.test(name))
  const all = shares.flatMap(({ substance, percent }) =>
    substance.statements
      .filter(({ code }) => (code === 'EUH071' && corrodes) || percent >= AS_SUCH_PERCENT)
      .map(({ code }) => ({ code, because: `${nameOf(substance)} ${shown(percent)} %` }))
  )
  return all.filter(({ code }, index) => all.findIndex(other => other.code === code) === index)
}
