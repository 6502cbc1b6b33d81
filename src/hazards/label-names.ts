/**
 * Ingredients that a label has to name: those that make a mixture poisonous, corrosive to the skin,
 * dangerous to the eyes, sensitising, or harmful in the long term.
 *
 * Source: CLP Article 18(3)(b) (from memory, not checked against the print).
 */

import type { ClassName } from './classes.ts'
import type { Finding } from './mixture.ts'
import { findSubstance } from './substances.ts'

const naming =
  /^(?:Acute Tox\.|Skin Corr\.|Eye Dam\.|Muta\.|Carc\.|Repr\.|Resp\. Sens\.|Skin Sens\.|STOT)/u

/** As many as the law thinks enough, as a rule. */
const MOST_NAMES = 4

/** What the product itself is called stands on the label anyway. */
const product = findSubstance('expandable graphite')

/** Names of the ingredients behind the classes, the most severe classes first. */
export function ingredientsToName(
  classes: readonly { readonly class: ClassName; readonly reasons: Finding['reasons'] }[]
): string[] {
  const names = classes
    .filter(({ class: name }) => naming.test(name))
    .flatMap(({ reasons }) => reasons.flatMap(({ parts }) => parts.map(({ name }) => name)))
    .filter(name => findSubstance(name) !== product)
  return [...new Set(names)].slice(0, MOST_NAMES)
}
