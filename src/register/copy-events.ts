/** What the chain of customers' copies can say, and how a copy is named. */

import * as z from 'zod'
import { count, hash, lineReader, name, sentence } from './events.ts'

const kinds = {
  /** The first line: a secret from which the list's fillings are made. */
  opened: z.strictObject({ is: z.literal('opened'), secret: hash }),
  sent: z.strictObject({
    is: z.literal('sent'),
    /** The certificate it is a copy of. */
    number: name,
    revision: count(),
    shipment: name,
    /** Counts the copies for one shipment from 1. */
    copy: count(),
    data: hash,
    pdf: hash,
    /** Why another took the place of the one before. */
    reason: sentence.exactOptional()
  })
}

type Opened = z.output<typeof kinds.opened>
export type Sent = z.output<typeof kinds.sent>
export type CopyEvent = Opened | Sent

export const readCopyLine = lineReader<CopyEvent>(kinds)

export type CopyNames = Pick<Sent, 'number' | 'revision' | 'shipment' | 'copy'>

/** Name of a copy's files without their ending: 'CT-26-022-r1-SH-26-07', 'CT-26-022-r1-SH-26-07-copy-2'. */
export const copyName = ({ number, revision, shipment, copy }: CopyNames): string =>
  `${number}-r${revision}-${shipment}${copy === 1 ? '' : `-copy-${copy}`}`

/** Name of the file that keeps what a copy says. */
export const copyDocument = (one: CopyNames): string => `${copyName(one)}.json`

/** What the copies for one shipment of one certificate have in common. */
export const seriesOf = (one: CopyNames): string => copyName({ ...one, copy: 1 })
