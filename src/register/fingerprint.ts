/** SHA-256 fingerprints, computed where the code runs: Node or browser. */

import { bytesOf, owned, toHex } from './bytes.ts'
import { canonicalText, type Json } from './canonical.ts'

/** Hashing is at hand: browsers lend it only to pages that come by https or from this machine. */
export const canHash = (): boolean => globalThis.crypto?.subtle !== undefined

/** As far as it is Node's: pages have none. */
declare const process:
  | {
      getBuiltinModule?(name: 'node:crypto'): {
        createHash(name: 'sha256'): { update(bytes: Uint8Array): { digest(): Uint8Array } }
      }
    }
  | undefined

/** Hashing as Node has it for itself: what browsers lend costs ten times as much for a short text. */
const ofNode =
  typeof process === 'undefined' ? undefined : process.getBuiltinModule?.('node:crypto')

export const sha256 = async (bytes: Uint8Array): Promise<Uint8Array> =>
  ofNode
    ? new Uint8Array(ofNode.createHash('sha256').update(bytes).digest())
    : new Uint8Array(await globalThis.crypto.subtle.digest('SHA-256', owned(bytes)))

/** SHA-256 of bytes, or of a text's UTF-8, as 64 hex digits. */
export const fingerprint = async (content: Uint8Array | string): Promise<string> =>
  toHex(await sha256(typeof content === 'string' ? bytesOf(content) : content))

/**
 * The first 16 digits in groups of four, for two people to compare by eye or by telephone: enough
 * to tell papers apart, too few to withstand someone who seeks a second paper with the same ones.
 */
export const shortFingerprint = (hash: string): string =>
  (hash.slice(0, 16).match(/.{4}/gu) ?? []).join(' ')

/**
 * Fingerprint of what is kept private, by which it can be shown later and not guessed before.
 *
 * @param salt at least 16 random bytes as text, kept with the private part: without it a short
 *   secret is found by trying
 * @throws RangeError for a shorter salt
 */
export async function sealedFingerprint(part: Json, salt: string): Promise<string> {
  if (bytesOf(salt).length < 16) throw new RangeError('sealedFingerprint requires 16 bytes of salt')
  return fingerprint(canonicalText({ part, salt }))
}
