/** What a standing says of a held document, its signatures and its PDF, in plain sentences. */

import { type Finding, finding, said } from './answer.ts'
import { bytesOf } from './bytes.ts'
import { shortFingerprint } from './fingerprint.ts'
import { checkSignature, type Checked } from './keys.ts'
import {
  type Revision,
  revisionOf,
  revisionsOf,
  type Standing,
  stateOf,
  successorOf
} from './standing.ts'
import type { Subject } from './subject.ts'
import type { SaidKey } from './words.ts'

/** What the document was compared with, as a sentence names it. */
export type SourceName = 'the register' | 'the proof'

const named = ({ number, revision }: { readonly number: string; readonly revision: number }) => ({
  number,
  revision
})

/** A reason as the end of a sentence. */
const ended = (reason: string) => (/[.!?]$/u.test(reason) ? reason : `${reason}.`)

export interface DocumentFindings {
  readonly findings: readonly Finding[]
  /** The revision that the document is, where it is one. */
  readonly revision?: Revision
}

/** Which revision the document is, and what became of it. */
export function documentFindings(
  subject: Subject,
  standing: Standing,
  source: SourceName
): DocumentFindings {
  const revision = standing.byData.get(subject.hash)
  if (!revision) return { findings: strangerFindings(subject, standing, source) }
  const { lot, n: line, date } = revision
  const print = shortFingerprint(subject.hash)
  const match = finding(
    undefined,
    said('match', { ...named(revision), lot, print, source, line, date })
  )
  return { revision, findings: [match, ...stateFindings(standing, revision)] }
}

/** What became of a revision; nothing where it stands. */
export function stateFindings(standing: Standing, revision: Revision): Finding[] {
  const state = stateOf(standing, revision)
  if (state === 'current') return []
  if (state === 'withdrawn') return [withdrawnFinding(revision)]
  const next = successorOf(standing, revision)!
  const last = revisionsOf(standing, revision.number).at(-1)!
  const { revision: n, date } = last
  const gone = last.withdrawn
  return [
    finding(
      'superseded',
      said('superseded', {
        revision: next.revision,
        date: next.date,
        reason: ended(next.reason!)
      }),
      ...(last === next ? [] : [said('newest', { revision: n, date })]),
      ...(gone
        ? [said('newestWithdrawn', { revision: n, date: gone.date, reason: ended(gone.reason) })]
        : [])
    )
  ]
}

const withdrawnFinding = ({ withdrawn }: Revision): Finding =>
  finding(
    'withdrawn',
    said('withdrawn', { date: withdrawn!.date, reason: ended(withdrawn!.reason) })
  )

/** A document that is none of those issued. */
function strangerFindings(subject: Subject, standing: Standing, source: SourceName): Finding[] {
  const { hash, number, revision } = subject
  const given = standing.voided.get(hash)
  if (given)
    return [
      finding(
        'withdrawn',
        said('voided', { ...named(given), date: given.date, reason: ended(given.reason) })
      )
    ]
  const form = formFindings(subject, standing)
  const claimed =
    number === undefined || revision === undefined
      ? undefined
      : revisionOf(standing, number, revision)
  if (!claimed) return [...form, noneOf(hash, source)]
  return [
    ...form,
    finding(
      'altered',
      said('altered', {
        ...named(claimed),
        print: shortFingerprint(hash),
        issued: shortFingerprint(claimed.data),
        source,
        line: claimed.n
      })
    )
  ]
}

const noneOf = (hash: string, source: SourceName): Finding =>
  finding('unknown', said('stranger', { source, print: shortFingerprint(hash) }))

/** A document that no certificate can be byte for byte, for it is not written as they are. */
function formFindings({ is, contentHash }: Subject, standing: Standing): Finding[] {
  if (is === 'canonical') return []
  if (is === 'not JSON') return [finding(undefined, said('notJson'))]
  const same = standing.byData.get(contentHash ?? '')
  const form = said('notCanonical')
  return same
    ? [finding('altered', form, said('sameContent', named(same)))]
    : [finding(undefined, form)]
}

/** Every signature entered for a revision, checked over the document held. */
export async function signatureFindings(
  { text }: Subject,
  standing: Standing,
  { signatures }: Revision
): Promise<Finding[]> {
  if (signatures.length === 0) return [finding(undefined, said('unsigned'))]
  const bytes = bytesOf(text)
  return Promise.all(
    signatures.map(async ({ key: id, signature, date }) => {
      const key = standing.keys.get(id)!
      const checked = await checkSignature(key.publicKey, signature, bytes)
      const by = { date, key: id, added: key.date }
      const { retired } = key
      return finding(
        checked === 'bad' ? 'altered' : undefined,
        retired
          ? said('signedRetired', { ...by, retired: retired.date, reason: ended(retired.reason) })
          : said('signed', by),
        said(checks[checked])
      )
    })
  )
}

const checks: Readonly<Record<Checked, SaidKey>> = {
  good: 'signatureGood',
  bad: 'signatureBad',
  'not checked here': 'signatureUnchecked'
}

/** The PDF's own bytes against those entered when it was drawn. */
export function pdfFinding(sha256: string, { drawn }: Revision, source: SourceName): Finding {
  if (drawn?.pdf === sha256)
    return finding(
      undefined,
      said('pdfSame', { date: drawn.date }),
      ...(drawn.cms === undefined ? [] : [said('pdfSigned')])
    )
  if (drawn)
    return finding(
      'altered',
      said('pdfOther', {
        date: drawn.date,
        print: shortFingerprint(sha256),
        drawn: shortFingerprint(drawn.pdf)
      })
    )
  return finding('unknown', said(source === 'the proof' ? 'pdfByProof' : 'pdfUnnamed'))
}
