/** Lines of the chain of copies that may not follow on those before them, or not on their documents. */

import { type CopyEvent, copyName, type Sent, seriesOf } from './copy-events.ts'
import type { Line } from './events.ts'
import { type Fault, faultAt, type Flaw } from './fault.ts'

/** What the lines before one come to. */
interface Before {
  /** Number of the last copy, by what it is in a series of. */
  readonly last: Map<string, number>
  /** Names by fingerprint. */
  readonly names: Map<string, string>
}

/** Lines that may not follow on those before them. */
export function ruleFaults(entries: readonly Line<CopyEvent>[]): Fault[] {
  const before: Before = { last: new Map(), names: new Map() }
  return entries.flatMap(({ n, event }, index) => {
    const flaw = index === 0 ? firstFlaw(event) : flawAfter(before, event)
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

/** Compare what was sent with the documents kept: name → fingerprint, as in compare.ts. */
export function compareCopies(
  copies: readonly (Sent & { readonly n: number })[],
  found: ReadonlyMap<string, string>
): Fault[] {
  const known = new Map(copies.map(one => [`${copyName(one)}.json`, one]))
  const strangers = [...found.keys()].filter(file => !known.has(file)).sort()
  return [
    ...strangers.map(file =>
      faultAt(0, [
        'REGISTER_NO_LINE',
        `${file} is in no line: its line was dropped, or it was never sent`
      ])
    ),
    ...[...known].flatMap(([file, { n, data }]) => {
      const own = found.get(file)
      if (own === data) return []
      return [
        own === undefined
          ? faultAt(n, ['REGISTER_NO_DOCUMENT', `${file} is not there`])
          : faultAt(n, [
              'REGISTER_DOCUMENT_CHANGED',
              `${file} is not the copy that was sent: its bytes were changed`
            ])
      ]
    })
  ]
}
