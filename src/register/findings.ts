/** What a standing says of a held document, its signatures and its PDF, in plain sentences. */

import type { Finding } from './answer.ts'
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

/** What the document was compared with, as a sentence names it. */
export type SourceName = 'the register' | 'the proof'

const named = ({ number, revision }: { readonly number: string; readonly revision: number }) =>
  `${number} revision ${revision}`

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
  const match: Finding = {
    sentence: `The document is ${named(revision)} for lot ${revision.lot}: its fingerprint ${shortFingerprint(subject.hash)} is the one that ${source} names on line ${revision.n}, entered on ${revision.date}.`
  }
  return { revision, findings: [match, ...stateFindings(standing, revision)] }
}

/** What became of a revision; nothing where it stands. */
export function stateFindings(standing: Standing, revision: Revision): Finding[] {
  const state = stateOf(standing, revision)
  if (state === 'current') return []
  if (state === 'withdrawn') return [withdrawnFinding(revision)]
  const next = successorOf(standing, revision)!
  const last = revisionsOf(standing, revision.number).at(-1)!
  const newest = last === next ? '' : ` The latest is revision ${last.revision} of ${last.date}.`
  const gone = last.withdrawn
    ? ` Revision ${last.revision} was withdrawn on ${last.withdrawn.date}: ${ended(last.withdrawn.reason)}`
    : ''
  return [
    {
      word: 'superseded',
      sentence: `It was superseded by revision ${next.revision} on ${next.date}: ${ended(next.reason!)}${newest}${gone}`
    }
  ]
}

const withdrawnFinding = ({ withdrawn }: Revision): Finding => ({
  word: 'withdrawn',
  sentence: `It was withdrawn on ${withdrawn!.date}: ${ended(withdrawn!.reason)}`
})

/** A document that is none of those issued. */
function strangerFindings(subject: Subject, standing: Standing, source: SourceName): Finding[] {
  const { hash, number, revision } = subject
  const given = standing.voided.get(hash)
  if (given)
    return [
      {
        word: 'withdrawn',
        sentence: `The document is one given up as ${named(given)} on ${given.date}: ${ended(given.reason)}`
      }
    ]
  const form = formFindings(subject, standing)
  const claimed =
    number === undefined || revision === undefined
      ? undefined
      : revisionOf(standing, number, revision)
  if (!claimed) return [...form, noneOf(hash, source)]
  return [
    ...form,
    {
      word: 'altered',
      sentence: `The document calls itself ${named(claimed)}, but its fingerprint ${shortFingerprint(hash)} is not ${shortFingerprint(claimed.data)}, which ${source} names on line ${claimed.n}: at least one byte was changed.`
    }
  ]
}

const noneOf = (hash: string, source: SourceName): Finding => ({
  word: 'unknown',
  sentence: `No line of ${source} names the fingerprint ${shortFingerprint(hash)} of this document, nor a number and revision that it gives.`
})

/** A document that no certificate can be byte for byte, for it is not written as they are. */
function formFindings({ is, contentHash }: Subject, standing: Standing): Finding[] {
  if (is === 'canonical') return []
  if (is === 'not JSON')
    return [{ sentence: 'The document is not JSON: its file was damaged, or is another one.' }]
  const same = standing.byData.get(contentHash ?? '')
  const sentence = 'The document is not written in canonical JSON, as every issued one is.'
  return same
    ? [
        {
          word: 'altered',
          sentence: `${sentence} What it says is ${named(same)} unchanged: only spaces, order or spelling of its text differ.`
        }
      ]
    : [{ sentence }]
}

/** Every signature entered for a revision, checked over the document held. */
export async function signatureFindings(
  { text }: Subject,
  standing: Standing,
  { signatures }: Revision
): Promise<Finding[]> {
  if (signatures.length === 0)
    return [{ sentence: 'No key of the register has signed what it says.' }]
  const bytes = bytesOf(text)
  return Promise.all(
    signatures.map(async ({ key: id, signature, date }) => {
      const key = standing.keys.get(id)!
      const checked = await checkSignature(key.publicKey, signature, bytes)
      const retired = key.retired
        ? ` and retired on ${key.retired.date}: ${ended(key.retired.reason)}`
        : '.'
      const sentence = `Signed on ${date} with key ${id}, added on ${key.date}${retired} ${checks[checked]}`
      return checked === 'bad' ? { word: 'altered', sentence } : { sentence }
    })
  )
}

const checks: Readonly<Record<Checked, string>> = {
  good: 'The signature is good.',
  bad: 'The signature is not that of this key over this document.',
  'not checked here': 'The signature was not checked here: this browser does not know Ed25519.'
}

const SIGNED_PDF =
  ' The file itself bears a signature with an X.509 certificate: whether that certificate can be trusted is for your PDF program to judge, and was not looked at here.'

/** The PDF's own bytes against those entered when it was drawn. */
export function pdfFinding(sha256: string, { drawn }: Revision, source: SourceName): Finding {
  if (drawn?.pdf === sha256)
    return {
      sentence: `The PDF is the one drawn on ${drawn.date}, byte for byte.${drawn.cms === undefined ? '' : SIGNED_PDF}`
    }
  if (drawn)
    return {
      word: 'altered',
      sentence: `The data attached to the PDF is genuine, but the PDF itself is not the one drawn on ${drawn.date}: its fingerprint is ${shortFingerprint(sha256)}, not ${shortFingerprint(drawn.pdf)}. Its pages may say something else than its data.`
    }
  return source === 'the proof'
    ? {
        word: 'unknown',
        sentence:
          'The data attached to the PDF is genuine. Its pages could not be compared: a proof carried inside a PDF cannot name the PDF itself, and the pages may say something else. Compare with the register.'
      }
    : {
        word: 'unknown',
        sentence:
          'The data attached to the PDF is genuine, but the register names no PDF for it: its pages may say something else.'
      }
}
