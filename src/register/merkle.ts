/**
 * A tree of hashes over the lines of a log: its root stands for all of them, and a short path shows
 * that one line, or one earlier root, belongs to it.
 *
 * Source: RFC 6962, 2.1 (hashes, paths); RFC 9162, 2.1.3.2 and 2.1.4.2 (verification).
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

/**
 * The hashes that show the tree's first `size` leaves to be those of an earlier tree.
 *
 * @throws RangeError for a size the tree did not have
 */
export async function consistencyPath(tree: Tree, size: number): Promise<Hash[]> {
  const whole = sizeOf(tree)
  if (size === 0 || !isCount(size, whole)) throw new RangeError('consistencyPath requires a size')
  return subproof(tree, size, 0, whole, true)
}

/** SUBPROOF of RFC 6962, 2.1.2, over the leaves from `from` to before `to`. */
async function subproof(
  tree: Tree,
  size: number,
  from: number,
  to: number,
  isOld: boolean
): Promise<Hash[]> {
  if (size === to - from) return isOld ? [] : [await rangeRoot(tree, from, to)]
  const middle = from + splitOf(to - from)
  return size <= middle - from
    ? [...(await subproof(tree, size, from, middle, isOld)), await rangeRoot(tree, middle, to)]
    : [
        ...(await subproof(tree, size - (middle - from), middle, to, false)),
        await rangeRoot(tree, from, middle)
      ]
}

/** Size and root of a tree: the whole log in a few digits. */
export interface TreeHead {
  readonly size: number
  readonly root: Hash
}

/** Whether `path` shows that the tree of `later` grew from that of `earlier`, nothing changed. */
export async function isConsistent(
  earlier: TreeHead,
  later: TreeHead,
  path: readonly Hash[]
): Promise<boolean> {
  if (!isCount(earlier.size, later.size) || earlier.size === 0) return false
  if (earlier.size === later.size) return path.length === 0 && isSame(earlier.root, later.root)
  const steps = Number.isInteger(Math.log2(earlier.size)) ? [earlier.root, ...path] : [...path]
  const [first, ...rest] = steps
  return first !== undefined && climb(earlier, later, first, rest)
}

/** RFC 9162, 2.1.4.2, steps 3 to 7. */
async function climb(
  earlier: TreeHead,
  later: TreeHead,
  first: Hash,
  rest: readonly Hash[]
): Promise<boolean> {
  let [at, last] = [earlier.size - 1, later.size - 1]
  while (at % 2 === 1) [at, last] = [half(at), half(last)]
  let [old, now] = [first, first]
  for (const step of rest) {
    if (last === 0) return false
    if (at % 2 === 1 || at === last) {
      ;[old, now] = [await nodeHash(step, old), await nodeHash(step, now)]
      while (at % 2 === 0 && at !== 0) [at, last] = [half(at), half(last)]
    } else now = await nodeHash(now, step)
    ;[at, last] = [half(at), half(last)]
  }
  return last === 0 && isSame(old, earlier.root) && isSame(now, later.root)
}
