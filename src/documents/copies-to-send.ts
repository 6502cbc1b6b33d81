/** Customers' copies on their way into the chain: frozen anew, or as they were sent before. */

import { copyName, type Sent } from '../register/copy-events.ts'
import { lastCopy } from '../register/copies.ts'
import { changesBetween, changesInShort } from './changes.ts'
import { copyOfFrozen, freezeCopy, type FrozenCopy, readFrozenCopy } from './frozen-copy.ts'
import { catalogues } from './languages/index.ts'
import type { KeptCopy, SentCopies } from './sent-copies.ts'
import type { CustomerCopy } from './shipment-types.ts'
import { unstopped } from './words.ts'

/** A copy as it goes to the customer. */
export interface CopyToSend {
  readonly copy: CustomerCopy
  /** What it says, as canonical JSON. */
  readonly text: string
  /** As it was sent before; absent where it is new. */
  readonly sent?: KeptCopy['sent']
  /** What the chain is to say of it beside its fingerprints. */
  readonly entry: Omit<Sent, 'data' | 'pdf'>
}

export interface Sending {
  readonly copies: SentCopies
  /** Random text for a copy that is new, at least 16 bytes. */
  readonly salt: () => string
  /** Why a copy that was sent is replaced. */
  readonly reason?: string | undefined
}

/** The copy that was sent before where it still says the same; else a new one, or why there is none. */
export function copyToSend(today: CustomerCopy, sending: Sending): CopyToSend | string {
  const { copies, salt, reason } = sending
  const last = lastKept(copies, today)
  if (!last) return frozenCopy(today, { copy: 1, salt: salt() })
  const again = againAs(today, last)
  if (again.text === last.text) return { ...again, sent: last.sent }
  if (reason === undefined)
    return `${whatDiffers(last, again)} To send another in its place, say why: --reason "..."`
  return frozenCopy(today, { copy: last.frozen.copy + 1, salt: salt(), reason })
}

/** What a copy that was sent says otherwise than the records do now; undefined where it is the same. */
export function copyDrift(today: CustomerCopy, last: KeptCopy): string | undefined {
  const again = againAs(today, last)
  return again.text === last.text ? undefined : whatDiffers(last, again)
}

const againAs = (today: CustomerCopy, { sent, frozen: { copy, salt } }: KeptCopy): CopyToSend =>
  frozenCopy(today, { copy, salt, reason: sent.reason })

function lastKept({ chain, kept }: SentCopies, { of }: CustomerCopy): KeptCopy | undefined {
  const sent = lastCopy(chain.copies, of)
  return kept.find(one => one.sent === sent)
}

interface Place extends Pick<FrozenCopy, 'copy' | 'salt'> {
  readonly reason?: string | undefined
}

function frozenCopy(today: CustomerCopy, { copy, salt, reason }: Place): CopyToSend {
  const { document, of } = today
  const said =
    reason === undefined
      ? document
      : {
          ...document,
          statements: [
            catalogues[document.language].copy.again(copy, unstopped(reason)),
            ...document.statements
          ]
        }
  const text = freezeCopy({ ...today, document: said }, { ...of, copy, salt })
  const entry = { is: 'sent', ...of, copy, ...(reason === undefined ? {} : { reason }) } as const
  return { copy: copyOfFrozen(readFrozenCopy(text)!), text, entry }
}

function whatDiffers({ sent, frozen }: KeptCopy, { copy }: CopyToSend): string {
  const before = copyOfFrozen(frozen)
  const changes = [
    ...changesBetween(before.document, copy.document),
    ...(isSame(before.limits, copy.limits) ? [] : ['The customer’s limits or verdicts differ.'])
  ]
  const told = changes.length > 0 ? changesInShort(changes) : 'Its wording differs.'
  return `${copyName(sent)} was sent on ${sent.date} and said otherwise. ${told}`
}

const isSame = (a: CustomerCopy['limits'], b: CustomerCopy['limits']) =>
  JSON.stringify(a) === JSON.stringify(b)

/** A copy that is only looked at: nothing is entered, and its pages say so. */
export const previewCopy = (copy: CustomerCopy): CustomerCopy => ({
  ...copy,
  document: { ...copy.document, mark: catalogues[copy.document.language].copy.preview }
})
