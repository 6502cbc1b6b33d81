/** What can be said of a customer's copy, in plain sentences. */

import * as z from 'zod'
import { type Finding, finding, said } from './answer.ts'
import { readJson } from './canonical.ts'
import { copyName } from './copy-events.ts'
import { belongsTo, type CopyList, type CopyState, isListed, readCopyList } from './copy-entries.ts'
import { stateFindings } from './findings.ts'
import { shortFingerprint } from './fingerprint.ts'
import type { ReadPublished } from './published.ts'
import type { Subject } from './subject.ts'

/** All that is read of a copy. */
const heldSchema = z.object({
  format: z.literal('lotfolio-copy'),
  number: z.string(),
  revision: z.number(),
  shipment: z.string(),
  copy: z.number(),
  /** Fingerprint of the certificate. */
  certificate: z.string(),
  salt: z.string().min(16)
})

export type HeldCopy = z.output<typeof heldSchema>

/** The document as a customer's copy; undefined where it is none. */
export function heldCopy({ text }: Subject): HeldCopy | undefined {
  const json = readJson(text)
  if (json.is === 'not JSON') return undefined
  const read = heldSchema.safeParse(json.value)
  return read.success ? read.data : undefined
}

/** What a copy is looked up in. */
export interface CopyEvidence {
  /** Text of the site's `copies.json`. */
  readonly copies?: string | undefined
  readonly register?: ReadPublished | undefined
  readonly pdf?: { readonly sha256: string } | undefined
}

/** Whether the copy is what was sent, and whether it and its certificate still stand. */
export async function copyFindings(
  subject: Subject,
  held: HeldCopy,
  { copies, register, pdf }: CopyEvidence
): Promise<Finding[]> {
  const list = copies === undefined ? undefined : readCopyList(copies)
  if (!list || !register?.ok) return [finding('unknown', said('copyNoList'))]
  if (!(await belongsTo(list, register.log))) return [finding('unknown', said('copyOtherList'))]
  return [
    ...(await listFindings(subject, held, list)),
    ...(pdf && !(await isListed(list, { is: 'pdf', ...pdf }, held.salt))
      ? [finding('altered', said('copyPdfChanged'))]
      : []),
    ...certificateFindings(held, register)
  ]
}

const named = ({ number, revision, shipment }: HeldCopy) => ({ number, revision, shipment })

async function listFindings({ hash }: Subject, held: HeldCopy, list: CopyList): Promise<Finding[]> {
  const isIn = (state: CopyState) => isListed(list, { is: 'data', sha256: hash, state }, held.salt)
  const of = { ...named(held), print: shortFingerprint(hash) }
  const isReplaced = await isIn('superseded')
  if (isReplaced || (await isIn('current'))) {
    const match = finding(undefined, said('copyMatch', of))
    return isReplaced ? [match, finding('superseded', said('copyReplaced'))] : [match]
  }
  const wasSent = await isListed(list, { is: 'name', name: copyName(held) }, held.salt)
  return [
    wasSent
      ? finding('altered', said('copyAltered', of))
      : finding('unknown', said('copyUnknown', of))
  ]
}

function certificateFindings(
  { certificate }: HeldCopy,
  { log: { standing } }: Extract<ReadPublished, { ok: true }>
): Finding[] {
  const revision = standing.byData.get(certificate)
  if (!revision) return [finding('unknown', said('copyOfNone'))]
  const { number, revision: n, lot, date } = revision
  const print = shortFingerprint(certificate)
  const of = finding(undefined, said('copyOf', { number, revision: n, lot, date, print }))
  return [of, ...stateFindings(standing, revision)]
}
