/** Entries of the published list of copies: how one is sealed, and found. */

import * as z from 'zod'
import { readJson } from './canonical.ts'
import { sealedFingerprint } from './fingerprint.ts'

/** Digits kept of an entry: 128 bits, which no one can meet by trying. */
export const DIGITS = 32

export type CopyState = 'current' | 'superseded'

/** What can be asked of a list. */
export type Asked =
  /** Whether a copy of that name was sent, whatever it said. */
  | { readonly is: 'name'; readonly name: string }
  | { readonly is: 'data'; readonly sha256: string; readonly state: CopyState }
  | { readonly is: 'pdf'; readonly sha256: string }

const listSchema = z.strictObject({
  format: z.literal('lotfolio-copies'),
  formatVersion: z.literal(1),
  /** Fingerprint of the private chain's last line. */
  head: z.string(),
  /** Changes whenever anything does. */
  epoch: z.string(),
  entries: z.array(z.string())
})

export type CopyList = z.output<typeof listSchema>

export const sealed = async (epoch: string, asked: Asked, salt: string): Promise<string> =>
  (await sealedFingerprint({ epoch, ...asked }, salt)).slice(0, DIGITS)

/** Whether a list has an entry. */
export const isListed = async (list: CopyList, asked: Asked, salt: string): Promise<boolean> =>
  list.entries.includes(await sealed(list.epoch, asked, salt))

/** Read a `copies.json`; undefined where it is none. */
export function readCopyList(text: string): CopyList | undefined {
  const json = readJson(text)
  const read = listSchema.safeParse(json.is === 'canonical' ? json.value : undefined)
  return read.success ? read.data : undefined
}
