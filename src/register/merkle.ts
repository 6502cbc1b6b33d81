/**
 * A tree of hashes over the lines of a log: its root stands for all of them, and a short path shows
 * that one line, or one earlier root, belongs to it.
 *
 * Source: RFC 6962, 2.1 (hashes, paths); RFC 9162, 2.1.3.2 (verification).
 */

import { concat, isSame } from './bytes.ts'
import { sha256 } from './fingerprint.ts'

type Hash = Uint8Array

/** Leaves and nodes are hashed with different first bytes, so that neither passes for the other. */
export const leafHash = (leaf: Uint8Array): Promise<Hash> => sha256(concat(Uint8Array.of(0), leaf))

const nodeHash = (left: Hash, right: Hash): Promise<Hash> =>
  sha256(concat(Uint8Array.of(1), left, right))

/**
 * All nodes: the leaves' hashes first, the root alone last. An odd node at the end of a level moves
 * up as it is, which gives the RFC's tree.
 */
export type Tree = readonly (readonly Hash[])[]

/** The tree over `leaves`; none make a tree of no level. */
export async function treeOver(leaves: readonly Uint8Array[]): Promise<Tree> {
  const levels: Hash[][] = []
  let level = await Promise.all(leaves.map(leafHash))
  while (level.length > 0) {
    levels.push(level)
    if (level.length === 1) break
    level = await Promise.all(pairsOf(level))
  }
  return levels
}

const pairsOf = (level: readonly Hash[]): (Promise<Hash> | Hash)[] =>
  level.flatMap((left, index) => {
    if (index % 2 === 1) return []
    const right = level[index + 1]
    return [right ? nodeHash(left, right) : left]
  })

export const sizeOf = (tree: Tree): number => tree[0]?.length ?? 0

/** The root of the first `size` leaves; of none, the hash of nothing. */
export async function rootOf(tree: Tree, size = sizeOf(tree)): Promise<Hash> {
  if (!isCount(size, sizeOf(tree))) throw new RangeError(`rootOf requires a size of the tree`)
  return size === 0 ? sha256(new Uint8Array()) : rangeRoot(tree, 0, size)
}

const isCount = (size: number, most: number) =>
  Number.isSafeInteger(size) && size >= 0 && size <= most

/** Root over the leaves from `from` to before `to`, which the tree splits nowhere else than here. */
async function rangeRoot(tree: Tree, from: number, to: number): Promise<Hash> {
  const level = Math.log2(to - from)
  if (Number.isInteger(level) && from % (to - from) === 0) return tree[level]![from / (to - from)]!
  const middle = from + splitOf(to - from)
  return nodeHash(await rangeRoot(tree, from, middle), await rangeRoot(tree, middle, to))
}

/** The largest power of two below `size`: where the RFC parts a tree. */
function splitOf(size: number): number {
  let split = 1
  while (split * 2 < size) split *= 2
  return split
}

/**
 * The hashes that lead from a leaf to the root of the first `size` leaves: PATH of RFC 6962, 2.1.1.
 *
 * @throws RangeError for a leaf or a size the tree does not have
 */
export async function inclusionPath(
  tree: Tree,
  index: number,
  size = sizeOf(tree)
): Promise<Hash[]> {
  if (!isCount(size, sizeOf(tree)) || !isCount(index, size - 1))
    throw new RangeError('inclusionPath requires a leaf')
  return pathWithin(tree, index, 0, size)
}

async function pathWithin(tree: Tree, index: number, from: number, to: number): Promise<Hash[]> {
  if (to - from === 1) return []
  const middle = from + splitOf(to - from)
  return index < middle
    ? [...(await pathWithin(tree, index, from, middle)), await rangeRoot(tree, middle, to)]
    : [...(await pathWithin(tree, index, middle, to)), await rangeRoot(tree, from, middle)]
}

/** Whether `path` leads from the leaf to `root` in a tree of `size` leaves. */
export async function isIncluded(
  leaf: Hash,
  index: number,
  size: number,
  root: Hash,
  path: readonly Hash[]
): Promise<boolean> {
  if (!isCount(index, size - 1)) return false
  let [at, last, hash] = [index, size - 1, leaf]
  for (const step of path) {
    if (last === 0) return false
    const onLeft = at % 2 === 1 || at === last
    hash = onLeft ? await nodeHash(step, hash) : await nodeHash(hash, step)
    // A node moved up as it is has no sibling on the levels it passes.
    while (onLeft && at % 2 === 0 && at !== 0) [at, last] = [half(at), half(last)]
    ;[at, last] = [half(at), half(last)]
  }
  return last === 0 && isSame(hash, root)
}

const half = (index: number) => Math.floor(index / 2)
