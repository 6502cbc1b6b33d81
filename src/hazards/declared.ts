/** What the producer declares beside what is computed. */

import { type ClassName, covers } from './classes.ts'
import { isCorrosive } from './findings.ts'
import type { Classification } from './classify.ts'

export interface Comparison {
  /** Computed, and declared neither so nor more severely. */
  readonly missing: readonly ClassName[]
  /** Declared beyond what is computed: the side of caution. */
  readonly beyond: readonly ClassName[]
}

/** Compare a declaration with a classification. Eye damage is declared with what corrodes skin. */
export function compareDeclared(
  declared: readonly ClassName[],
  { classes }: Pick<Classification, 'classes'>
): Comparison {
  const computed = classes.map(({ class: name }) => name)
  const implied = declared.some(name => isCorrosive({ class: name }))
  const isDeclared = (name: ClassName) =>
    declared.some(other => covers(other, name)) || (name === 'Eye Dam. 1' && implied)
  return {
    missing: computed.filter(name => !isDeclared(name)),
    beyond: declared.filter(name => !computed.some(other => covers(other, name)))
  }
}
