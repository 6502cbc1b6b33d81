/** What labels are wanted, in a user's words. */

import { isUnreadable, readQuantity } from '../metrology/written.ts'
import type { Container, Producer } from '../records/types.ts'
import type { Language } from '../hazards/statements.ts'
import type { Edition } from '../hazards/editions.ts'
import type { LabelRules } from './label-types.ts'
import { labelLanguages } from './label-words/index.ts'

/** Whose classes, statements and wording the label has. */
export const editionWanted = ({ profile, wording = 'clp' }: LabelRules): Edition =>
  profile === 'us' ? 'us' : wording

/**
 * Rules asked for, each else as the record has it, else European and in English. Rules of other sizes
 * leave the record's wording behind, and editions with English texts alone its languages.
 */
export function rulesFor(asked: Partial<LabelRules>, recorded: Producer['labels']): LabelRules {
  const wordingAsked = asked.wording !== undefined
  const profile = asked.profile ?? (wordingAsked ? undefined : recorded?.profile) ?? 'eu-2028'
  const wording = asked.wording ?? (asked.profile === undefined ? recorded?.wording : undefined)
  const rules = { profile, ...(wording !== undefined && profile !== 'us' && { wording }) }
  const isEnglish = editionWanted({ ...rules, languages: [] }) !== 'clp'
  const languages = asked.languages ?? (isEnglish ? undefined : recorded?.languages) ?? ['en']
  return { ...rules, languages }
}

/** A container by its kind and two quantities as typed, or what is wrong with them. */
export function readContainer(
  kind: Container['kind'],
  capacity: string,
  holds: string
): Container | string {
  const capacity_L = readQuantity(capacity, 'L')
  const holds_g = readQuantity(holds, 'g')
  if (isUnreadable(capacity_L) || !(capacity_L.value > 0))
    return `write the capacity with its unit, such as 60L or 500mL, not '${capacity}'`
  if (isUnreadable(holds_g) || !(holds_g.value > 0))
    return `write the nominal quantity with its unit, such as 25kg or 100g, not '${holds}'`
  return { kind, capacity_L, holds_g }
}

/** Languages as typed, 'de,fr', each once; or what is wrong with them. */
export function readLanguages(text: string): Language[] | string {
  const typed = text.split(',').map(one => one.trim())
  const unknown = typed.find(one => !labelLanguages.some(known => known === one))
  return unknown === undefined
    ? labelLanguages
        .filter(known => typed.includes(known))
        .sort((a, b) => typed.indexOf(a) - typed.indexOf(b))
    : `there are no label texts in '${unknown}': write one or more of ${labelLanguages.join(', ')}`
}
