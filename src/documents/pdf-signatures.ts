/** The signatures that issued PDFs bear, as they lie in the register. */

import { fingerprint } from '../register/fingerprint.ts'
import type { Standing } from '../register/standing.ts'

/** Signatures by file name, 'CT-26-005-r1.p7s'. */
export interface Signatures {
  readonly own: ReadonlyMap<string, Uint8Array>
  /** Of a run that was stopped: to be believed where the log knows them. */
  readonly pending: ReadonlyMap<string, Uint8Array>
}

/** A signature, DER, and its fingerprint. */
export interface HashedSignature {
  readonly cms: Uint8Array
  readonly hash: string
}

/** Those that lie there under their own name, and of a stopped run those the log names. */
export async function signaturesKnownTo(
  { byData }: Standing,
  { own, pending }: Signatures = { own: new Map(), pending: new Map() }
): Promise<ReadonlyMap<string, HashedSignature>> {
  const named = new Set([...byData.values()].map(({ drawn }) => drawn?.cms))
  const stopped = (await hashed(pending)).filter(([, { hash }]) => named.has(hash))
  return new Map([...stopped, ...(await hashed(own))])
}

const hashed = (files: ReadonlyMap<string, Uint8Array>) =>
  Promise.all(
    [...files].map(async ([name, cms]) => [name, { cms, hash: await fingerprint(cms) }] as const)
  )
