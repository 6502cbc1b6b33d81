/**
 * Supplemental statements (EUH) that ingredients bring: CLP's alone.
 *
 * Source: CLP Annex II, 1.2.6 (EUH071), 1.1.3 (EUH014), 2.8 (EUH208) and 2.10 (EUH210) (numbers from
 * memory, not checked against the print).
 */

import type { ClassName } from './classes.ts'
import { hasUnionLimit } from './exposure.ts'
import { isCorrosive } from './findings.ts'
import { type Finding, nameOf, type Point, type Share, shown } from './mixture.ts'
import { hasClass, ownLimit } from './substances.ts'

export interface Supplement {
  readonly code: string
  readonly because: string
  /** Words for the gap the law leaves in it. */
  readonly fill?: string
}

/** A mixture behaves as a substance does in it from here on. */
const AS_SUCH_PERCENT = 99
/** A sensitiser speaks up from a tenth of its limit on. */
const TENTH = 10
const SENSITISER_PERCENT = 1
/** An ingredient of any hazard makes its sheet worth asking for from here on; these from less. */
const HAZARDOUS_PERCENT = 1
const SEVERE_PERCENT = 0.1

const sensitisers: readonly ClassName[] = ['Resp. Sens. 1', 'Skin Sens. 1']
const severe: readonly ClassName[] = ['Carc. 2', 'Repr. 1B', 'Repr. 2', ...sensitisers]

/** @param registered the main part is a registered substance, and small rests belong to it */
export function supplementsOf(
  point: Point,
  found: readonly Finding[],
  registered = false
): Supplement[] {
  if ((point.edition ?? 'clp') !== 'clp') return []
  const all = [
    ...broughtBy(point, found),
    ...sensitising(point, found),
    ...(found.length > 0 ? [] : sheetOnRequest(point, registered))
  ]
  return all.filter(({ code }, index) => all.findIndex(other => other.code === code) === index)
}

/**
 * EUH071 where the mixture is corrosive and toxic by inhalation, and an ingredient is known to corrode
 * the airways; others where the mixture is the substance itself.
 */
function broughtBy({ shares }: Point, found: readonly Finding[]): Supplement[] {
  const corrodes =
    found.some(isCorrosive) && found.some(({ class: name }) => /^Acute.*inhalation$/u.test(name))
  return shares.flatMap(({ substance, percent }) =>
    substance.statements
      .filter(({ code }) => (code === 'EUH071' && corrodes) || percent >= AS_SUCH_PERCENT)
      .map(({ code }) => ({ code, because: wordShare({ substance, percent }) }))
  )
}

/** EUH208: sensitisers in a mixture that is not itself classified for them, together in one. */
function sensitising({ shares }: Point, found: readonly Finding[]): Supplement[] {
  if (found.some(({ class: name }) => sensitisers.includes(name))) return []
  const bearers = shares.filter(({ substance, percent }) => {
    const limit = ownLimit(substance, sensitisers)?.from_percent ?? SENSITISER_PERCENT
    return hasClass(substance, sensitisers) && percent >= limit / TENTH
  })
  if (bearers.length === 0) return []
  const fill = bearers.map(({ substance }) => nameOf(substance)).join(', ')
  return [{ code: 'EUH208', because: bearers.map(wordShare).join('; '), fill }]
}

/** EUH210: nothing is classified, but there is enough of something that is. */
function sheetOnRequest({ shares }: Point, registered: boolean): Supplement[] {
  const bearers = shares.filter(
    ({ substance, percent }) =>
      (substance.classes.length > 0 && percent >= HAZARDOUS_PERCENT) ||
      (hasClass(substance, severe) && percent >= SEVERE_PERCENT) ||
      (!registered && hasUnionLimit(substance))
  )
  return bearers.length === 0
    ? []
    : [{ code: 'EUH210', because: bearers.map(wordShare).join('; ') }]
}

const wordShare = ({ substance, percent }: Share) => `${nameOf(substance)} ${shown(percent)} %`
