/** Lines of the chain of copies that may not follow on those before them, or not on their documents. */

import { compareFiles } from './compare.ts'
import { copyDocument, type CopyEvent, copyName, type Sent, seriesOf } from './copy-events.ts'
import type { Line } from './events.ts'
import { dateFlaw, type Fault, faultAt, type Flaw } from './fault.ts'

/** What the lines before one come to. */
interface Before {
  /** Day of the line above. */
  day: string
  /** Number of the last copy, by what it is in a series of. */
  readonly last: Map<string, number>
  /** Names by fingerprint. */
  readonly names: Map<string, string>
}

/** Lines that may not follow on those before them. */
export function ruleFaults(entries: readonly Line<CopyEvent>[]): Fault[] {
  const before: Before = { day: '', last: new Map(), names: new Map() }
  return entries.flatMap(({ n, date, event }, index) => {
    const flaw =
      (index === 0 ? firstFlaw(event) : flawAfter(before, event)) ?? dateFlaw(date, before.day)
    before.day = date
    if (event.is === 'sent') {
      before.last.set(seriesOf(event), event.copy)
      before.names.set(event.data, copyName(event))
    }
    return flaw ? [faultAt(n, flaw)] : []
  })
}

const firstFlaw = ({ is }: CopyEvent): Flaw | undefined =>
  is === 'opened'
    ? undefined
    : ['REGISTER_REVISION', 'the first line of the chain of copies opens it; this one does not']

function flawAfter({ last, names }: Before, event: CopyEvent): Flaw | undefined {
  if (event.is === 'opened') return ['REGISTER_TWICE', 'the chain of copies was opened already']
  const stands = last.get(seriesOf(event)) ?? 0
  if (event.copy !== stands + 1)
    return [
      'REGISTER_REVISION',
      `${seriesOf(event)} stands at copy ${stands}: the next is ${stands + 1}, not ${event.copy}`
    ]
  const same = names.get(event.data)
  if (same !== undefined) return ['REGISTER_SAME_DATA', `this document is ${same}`]
  return event.copy > 1 && event.reason === undefined
    ? ['REGISTER_FIELD', `"reason" is missing: why copy ${event.copy} took the place of another`]
    : undefined
}

/** Compare what was sent with the documents kept: name → fingerprint. */
export const compareSent = (
  copies: readonly (Sent & { readonly n: number })[],
  found: ReadonlyMap<string, string>
): Fault[] =>
  compareFiles(
    copies.map(one => ({
      name: copyDocument(one),
      n: one.n,
      hash: one.data,
      what: 'the copy that was sent'
    })),
    found,
    'it was never sent'
  )
