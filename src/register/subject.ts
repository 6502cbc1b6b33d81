/** A document that someone holds, as far as it says itself what it is. */

import { canonicalText, type Json, membersOf, readJson } from './canonical.ts'
import { fingerprint } from './fingerprint.ts'

export interface Subject {
  readonly text: string
  readonly hash: string
  readonly is: 'canonical' | 'not canonical' | 'not JSON'
  /** Fingerprint of the same content written as it should be. */
  readonly contentHash?: string
  /** The members `number` and `revision` at its top: all that is read of a document. */
  readonly number?: string
  readonly revision?: number
}

export async function subjectOf(text: string): Promise<Subject> {
  const json = readJson(text)
  const hash = await fingerprint(text)
  if (json.is === 'not JSON') return { text, hash, is: json.is }
  const { number, revision } = membersOf(json.value)
  return {
    text,
    hash,
    is: json.is,
    ...(await contentHashOf(json.value)),
    ...(typeof number === 'string' ? { number } : {}),
    ...(typeof revision === 'number' ? { revision } : {})
  }
}

async function contentHashOf(value: Json): Promise<{ contentHash?: string }> {
  try {
    return { contentHash: await fingerprint(canonicalText(value)) }
  } catch {
    // Half a surrogate pair, or nesting deeper than the stack: no canonical text exists.
    return {}
  }
}
