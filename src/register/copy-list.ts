/**
 * What a site publishes of customers' copies: entries that only the holder of a copy can find, among
 * fillings that nobody can tell from them.
 *
 * An entry is the fingerprint of what a copy is, sealed with the salt that the copy carries. Whenever
 * a copy is sent or the register grows, every entry and every filling becomes another: two lists,
 * compared, tell nothing. Their number is one of a few sizes, and tells no more than that.
 */

import { canonicalText } from './canonical.ts'
import { type CopyChain, headOfCopies, type SentCopy } from './copies.ts'
import { type Asked, DIGITS, headWithCopies, sealed } from './copy-entries.ts'
import { copyName } from './copy-events.ts'
import { fingerprint } from './fingerprint.ts'
import { headOf, type Log, treeOf } from './log.ts'

/** Least number of entries; a list too long for it has four times as many, and so on. */
const LEAST = 256
const STEP = 4

/**
 * The text of `copies.json`.
 *
 * @param salts of each copy, by its name
 * @param log the public register that is published with it
 * @throws RangeError for a chain with faults, or without the salt of a copy
 */
export async function copyListText(
  chain: CopyChain,
  salts: ReadonlyMap<string, string>,
  log: Pick<Log, 'lines'>
): Promise<string> {
  if (chain.faults.length > 0) throw new RangeError('copyListText requires a chain without faults')
  const head = headOfCopies(chain)
  const { secret } = chain
  const { root } = await headOf(await treeOf(log))
  const epoch = secret === undefined ? '' : await fingerprint(canonicalText({ head, root, secret }))
  const own = await Promise.all(
    chain.copies.map(one => entriesOf(epoch, one, salts.get(copyName(one))))
  )
  const entries = secret === undefined ? [] : await filled(own.flat(), epoch, secret)
  const list = { format: 'lotfolio-copies', formatVersion: 1, head, epoch, entries } as const
  return canonicalText({ ...list, tree: { ...(await headWithCopies(log, list)) } })
}

async function entriesOf(
  epoch: string,
  one: SentCopy,
  salt: string | undefined
): Promise<string[]> {
  if (salt === undefined) throw new RangeError(`copyListText requires the salt of ${copyName(one)}`)
  const state = one.isReplaced ? 'superseded' : 'current'
  const asked: Asked[] = [
    { is: 'name', name: copyName(one) },
    { is: 'data', sha256: one.data, state },
    { is: 'pdf', sha256: one.pdf }
  ]
  return Promise.all(asked.map(each => sealed(epoch, each, salt)))
}

/** In the order of their digits, with as many fillings as the next size takes. */
async function filled(own: readonly string[], epoch: string, secret: string): Promise<string[]> {
  let size = LEAST
  while (size < own.length) size *= STEP
  const fillings = await Promise.all(
    Array.from({ length: size - own.length }, async (_, index) =>
      (await fingerprint(canonicalText({ epoch, index, secret }))).slice(0, DIGITS)
    )
  )
  return [...own, ...fillings].sort()
}
