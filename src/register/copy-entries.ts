/** Entries of the published list of copies: how one is sealed, and found. */

import * as z from 'zod'
import { bytesOf } from './bytes.ts'
import { canonicalText, readJson } from './canonical.ts'
import { sealedFingerprint } from './fingerprint.ts'
import { type Head, headOf, type Log } from './log.ts'
import { treeOver } from './merkle.ts'

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
  entries: z.array(z.string()),
  /** Of the tree over the lines of the register it was published with, and over the list as its last leaf. */
  tree: z.strictObject({ size: z.int().min(1), root: z.string() })
})

export type CopyList = z.output<typeof listSchema>

/**
 * The head of a build: one figure for every line of the register and for all that is published of
 * copies, so that neither can be exchanged alone.
 */
export const headWithCopies = async (
  { lines }: Pick<Log, 'lines'>,
  list: Omit<CopyList, 'tree'>
): Promise<Head> => headOf(await treeOver([...lines, canonicalText(list)].map(bytesOf)))

/** Whether a list was published with a register, and is whole. */
export async function belongsTo(list: CopyList, log: Pick<Log, 'lines'>): Promise<boolean> {
  const { tree, ...rest } = list
  const { size, root } = await headWithCopies(log, rest)
  return tree.size === size && tree.root === root
}

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
