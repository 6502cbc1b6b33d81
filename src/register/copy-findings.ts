/** What can be said of a customer's copy, in plain sentences. */

import * as z from 'zod'
import type { Finding } from './answer.ts'
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
  if (!list || !register?.ok) return [{ word: 'unknown', sentence: NOTHING_TO_COMPARE }]
  if (!(await belongsTo(list, register.log))) return [{ word: 'unknown', sentence: OF_ANOTHER }]
  return [
    ...(await listFindings(subject, held, list)),
    ...(pdf && !(await isListed(list, { is: 'pdf', ...pdf }, held.salt)) ? [PDF_CHANGED] : []),
    ...certificateFindings(held, register)
  ]
}

const NOTHING_TO_COMPARE =
  'This is a customer’s copy of a certificate. It can be compared only with the producer’s register and list of copies, and one of them was not given or is damaged.'

const OF_ANOTHER =
  'This is a customer’s copy of a certificate. The list of copies given here was not published with the register given here, or was changed: the root it names is another. Take both from the producer’s site at one time.'

const PDF_CHANGED: Finding = {
  word: 'altered',
  sentence:
    'The PDF is not the one that was sent: its pages or its files were changed by at least one byte.'
}

const titleOf = (held: HeldCopy) =>
  `the customer’s copy of ${held.number} revision ${held.revision} for shipment ${held.shipment}`

async function listFindings({ hash }: Subject, held: HeldCopy, list: CopyList): Promise<Finding[]> {
  const isIn = (state: CopyState) => isListed(list, { is: 'data', sha256: hash, state }, held.salt)
  const short = shortFingerprint(hash)
  const isReplaced = await isIn('superseded')
  if (isReplaced || (await isIn('current'))) {
    const match = `The document is ${titleOf(held)}: the producer’s list of copies has an entry for its fingerprint ${short}.`
    return isReplaced
      ? [{ sentence: match }, { word: 'superseded', sentence: 'Another copy took its place.' }]
      : [{ sentence: match }]
  }
  const wasSent = await isListed(list, { is: 'name', name: copyName(held) }, held.salt)
  return [
    wasSent
      ? {
          word: 'altered',
          sentence: `The document calls itself ${titleOf(held)}, which was sent, but the producer’s list of copies has no entry for its fingerprint ${short}: at least one byte was changed.`
        }
      : {
          word: 'unknown',
          sentence: `The document calls itself ${titleOf(held)}, but the producer’s list of copies has no entry for it: it was not sent, or was changed.`
        }
  ]
}

function certificateFindings(
  { certificate }: HeldCopy,
  { log: { standing } }: Extract<ReadPublished, { ok: true }>
): Finding[] {
  const revision = standing.byData.get(certificate)
  if (!revision)
    return [
      {
        word: 'unknown',
        sentence: 'The register names no certificate that the document could be a copy of.'
      }
    ]
  const of: Finding = {
    sentence: `The certificate is ${revision.number} revision ${revision.revision} for lot ${revision.lot}, entered on ${revision.date} with the fingerprint ${shortFingerprint(certificate)}.`
  }
  return [of, ...stateFindings(standing, revision)]
}
