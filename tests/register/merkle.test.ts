/** The tree of RFC 6962 against its known roots, and against a second, naive computation. */

import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { bytesOf, fromHex, toHex } from '../../src/register/bytes.ts'
import { inclusionPath, isIncluded, leafHash, rootOf, treeOver } from '../../src/register/merkle.ts'

const sha = (...parts: readonly Uint8Array[]): Uint8Array => {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part)
  return new Uint8Array(hash.digest())
}

/** MTH of RFC 6962, 2.1, as it is written there. */
function naiveRoot(leaves: readonly Uint8Array[]): Uint8Array {
  if (leaves.length === 0) return sha()
  if (leaves.length === 1) return sha(Uint8Array.of(0), leaves[0]!)
  const k = 2 ** (Math.ceil(Math.log2(leaves.length)) - 1)
  return sha(Uint8Array.of(1), naiveRoot(leaves.slice(0, k)), naiveRoot(leaves.slice(k)))
}

/** PATH of RFC 6962, 2.1.1. */
function naivePath(index: number, leaves: readonly Uint8Array[]): Uint8Array[] {
  if (leaves.length <= 1) return []
  const k = 2 ** (Math.ceil(Math.log2(leaves.length)) - 1)
  return index < k
    ? [...naivePath(index, leaves.slice(0, k)), naiveRoot(leaves.slice(k))]
    : [...naivePath(index - k, leaves.slice(k)), naiveRoot(leaves.slice(0, k))]
}

const leavesOf = (count: number) => Array.from({ length: count }, (_, index) => bytesOf(`${index}`))

/** Leaves and roots of the trees of the first 0 to 8 of them: well known, from memory of tests. */
const known = [
  '',
  '00',
  '10',
  '2021',
  '3031',
  '40414243',
  '5051525354555657',
  '606162636465666768696a6b6c6d6e6f'
]
const roots = [
  'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328'
]

describe('roots', () => {
  test.for(roots.map((root, size) => [size, root] as const))(
    'RFC 6962, 2.1: the known tree of %i leaves has root %s',
    async ([size, root]) => {
      const leaves = known.slice(0, size).map(fromHex)
      expect(toHex(await rootOf(await treeOver(leaves)))).toBe(root)
      // The same root is found inside the larger tree.
      expect(toHex(await rootOf(await treeOver(known.map(fromHex)), size))).toBe(root)
    }
  )

  test('are those of the naive computation, at every earlier size', async () => {
    const leaves = leavesOf(70)
    const tree = await treeOver(leaves)
    for (let size = 0; size <= leaves.length; size++)
      expect(toHex(await rootOf(tree, size))).toBe(toHex(naiveRoot(leaves.slice(0, size))))
  })

  test.for([-1, 4, 1.5, NaN])('a tree of 3 has none of size %d', async size => {
    await expect(rootOf(await treeOver(leavesOf(3)), size)).rejects.toThrow(RangeError)
  })
})

/** Each of these changes a path or an index so that it is no longer right. */
const spoilt = (path: readonly Uint8Array[]): Uint8Array[][] => [
  [...path, new Uint8Array(32)],
  ...path.map((_, at) => path.filter((_, index) => index !== at)),
  ...path.map((_, at) => path.map((hash, index) => (index === at ? flipped(hash) : hash))),
  ...path
    .slice(1)
    .map((hash, at) =>
      path.map((same, index) => (index === at ? hash : index === at + 1 ? path[at]! : same))
    )
]

const flipped = (hash: Uint8Array) => hash.map((byte, index) => (index === 5 ? byte ^ 1 : byte))

describe('inclusion', () => {
  test('every leaf of every tree up to 40: the naive path, and it verifies', async () => {
    for (let size = 1; size <= 40; size++) {
      const leaves = leavesOf(size)
      const tree = await treeOver(leaves)
      const root = naiveRoot(leaves)
      for (const [index, leaf] of leaves.entries()) {
        const path = await inclusionPath(tree, index)
        expect(path.map(toHex)).toEqual(naivePath(index, leaves).map(toHex))
        expect(await isIncluded(await leafHash(leaf), index, size, root, path)).toBe(true)
      }
    }
  })

  test('a spoilt path, another leaf, index or root never verifies', async () => {
    for (let size = 1; size <= 12; size++) {
      const leaves = leavesOf(size)
      const tree = await treeOver(leaves)
      const root = await rootOf(tree)
      for (const [index, leaf] of leaves.entries()) {
        const path = await inclusionPath(tree, index)
        const hash = await leafHash(leaf)
        const check = (at: number, of: number, to: Uint8Array, by: Uint8Array[], from = hash) =>
          isIncluded(from, at, of, to, by)
        for (const bad of spoilt(path)) expect(await check(index, size, root, bad)).toBe(false)
        for (let other = -1; other <= size; other++)
          expect(await check(other, size, root, path)).toBe(other === index)
        expect(await check(index, size, flipped(root), path)).toBe(false)
        expect(await check(index, size, root, path, flipped(hash))).toBe(false)
        expect(await check(index, index, root, path)).toBe(false)
      }
    }
  })

  test('a node does not pass for a leaf', async () => {
    const tree = await treeOver(leavesOf(2))
    const [left, right] = tree[0]!
    const forged = await leafHash(new Uint8Array([...left!, ...right!]))
    expect(toHex(forged)).not.toBe(toHex(await rootOf(tree)))
  })

  test.for([-1, 3, 0.5])('a tree of 3 has no leaf %d', async index => {
    const tree = await treeOver(leavesOf(3))
    await expect(inclusionPath(tree, index)).rejects.toThrow(RangeError)
  })

  test('the first leaves of a larger tree have the paths of a tree of their own', async () => {
    const larger = await treeOver(leavesOf(23))
    for (let size = 1; size <= 23; size++) {
      const own = await treeOver(leavesOf(size))
      for (let index = 0; index < size; index++)
        expect((await inclusionPath(larger, index, size)).map(toHex)).toEqual(
          (await inclusionPath(own, index)).map(toHex)
        )
      await expect(inclusionPath(larger, size, size)).rejects.toThrow(RangeError)
    }
    await expect(inclusionPath(larger, 0, 24)).rejects.toThrow(RangeError)
  })
})
