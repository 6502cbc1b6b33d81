/**
 * Combustible dust: a hazard of the United States' rules, told by test data, or not excluded. The
 * European Union has no such class.
 *
 * Source: 29 CFR 1910.1200, Appendix C.4.30; the statement as OSHA's letters of interpretation of
 * 2013 and 2014 quote it, that it comes with 'Warning' and no pictogram from memory.
 */

import { clauses, type Clause } from './clauses.ts'
import type { Point } from './mixture.ts'

export type DustTest = 'combustible' | 'not combustible'

export interface DustText {
  readonly signal: 'Warning'
  readonly text: string
  readonly because: 'dust test positive' | 'not excluded by a dust test'
  readonly clause: Clause
}

const AS_DUST = 'May form combustible dust concentrations in air.'
const AS_PIECES =
  'If small particles are generated during further processing, handling or by other means, may form combustible dust concentrations in air.'

/** What a label in the United States says of dust; nothing where a test excluded it. */
export function dustText(
  { shares }: Point,
  form: 'dust' | 'pieces',
  test?: DustTest
): DustText | undefined {
  const burns = shares.some(({ substance }) =>
    substance.traits.some(({ trait }) => trait === 'combustible dust')
  )
  if (test === 'not combustible' || (test === undefined && !burns)) return undefined
  return {
    signal: 'Warning',
    text: form === 'dust' ? AS_DUST : AS_PIECES,
    because: test ? 'dust test positive' : 'not excluded by a dust test',
    clause: clauses.dust
  }
}
