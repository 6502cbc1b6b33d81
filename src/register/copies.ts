/**
 * The chain of customers' copies: what was sent, under which certificate. It names shipments and is
 * private; a site publishes only its list of sealed entries, see copy-list.ts.
 */

import { NO_LINE, readChain } from './chain.ts'
import { type CopyEvent, type CopyNames, readCopyLine, type Sent, seriesOf } from './copy-events.ts'
import { ruleFaults } from './copy-rules.ts'
import { type Fault, faultAt, type Outcome } from './fault.ts'
import { lengthened } from './log.ts'
import { readLineBy, splitLines } from './lines.ts'

/** A copy as the chain has it. */
export interface SentCopy extends Sent {
  readonly n: number
  readonly date: string
  /** Whether another took its place. */
  readonly isReplaced: boolean
}

export interface CopyChain {
  /** In the order of the chain. */
  readonly copies: readonly SentCopy[]
  /** Absent where nothing was ever sent. */
  readonly secret?: string
  /** Fingerprint of each line. */
  readonly hashes: readonly string[]
  readonly faults: readonly Fault[]
}

export const noCopies: CopyChain = { copies: [], hashes: [], faults: [] }

/** Fingerprint of the last line: the whole chain in one figure. */
export const headOfCopies = ({ hashes }: CopyChain): string => hashes.at(-1) ?? NO_LINE

/** The last copy sent for a shipment of a certificate. */
export const lastCopy = <One extends CopyNames>(
  copies: readonly One[],
  wanted: Omit<CopyNames, 'copy'>
): One | undefined => copies.findLast(one => seriesOf(one) === seriesOf({ ...wanted, copy: 1 }))

/** Read the chain, and say everything that is wrong with it. */
export async function readCopies(text: string): Promise<CopyChain> {
  const { lines: raw, faults } = splitLines(text)
  const lines = raw.map(line => readLineBy(readCopyLine, line))
  const chain = await readChain(lines)
  const entries = lines.flatMap(({ entry }) => entry ?? [])
  const sent = entries.flatMap(({ event, n, date }) =>
    event.is === 'sent' ? [{ ...event, n, date }] : []
  )
  const [first] = entries
  const last = new Map(sent.map(one => [seriesOf(one), one]))
  return {
    copies: sent.map(one => ({ ...one, isReplaced: last.get(seriesOf(one)) !== one })),
    ...(first?.event.is === 'opened' ? { secret: first.event.secret } : {}),
    hashes: chain.hashes,
    faults: [
      ...faults,
      ...lines.flatMap(({ line, flaws }) => flaws.map(flaw => faultAt(line, flaw))),
      ...chain.faults,
      ...ruleFaults(entries)
    ].sort((a, b) => a.line - b.line)
  }
}

/**
 * Add copies at the end.
 *
 * @param secret 32 random bytes in hex, for a chain that is not open yet
 * @param date the day they are entered
 */
export async function appendCopies(
  text: string,
  sent: readonly Sent[],
  date: string,
  secret: string
): Promise<Outcome<{ readonly text: string }>> {
  const opening: readonly CopyEvent[] = text === '' ? [{ is: 'opened', secret }] : []
  const longer = await lengthened(text, [...opening, ...sent], date, readCopyLine)
  if (!longer.ok) return longer
  const { faults } = await readCopies(longer.text)
  return faults.length > 0 ? { ok: false, faults } : longer
}
