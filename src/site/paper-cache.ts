/**
 * PDFs and pages of earlier builds, by the hash of all that goes into one.
 *
 * An entry is its own checksum and the PDF's bytes; one that was cut short or altered is made again.
 */

import { createHash } from 'node:crypto'
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { isMissing } from './failure.ts'

const sha256 = (...parts: (string | Uint8Array)[]): string =>
  parts.reduce((hash, part) => hash.update(part), createHash('sha256')).digest('hex')

/** Length of a checksum in hexadecimal digits. */
const CHECKSUM_LENGTH = 64

type Inputs = readonly (string | Uint8Array)[]

export interface PaperCache {
  /** The paper these inputs yield: kept from an earlier build, or rendered now. */
  readonly paper: (inputs: Inputs, render: () => Promise<Uint8Array>) => Promise<Uint8Array>
  /** What these inputs yielded in an earlier build. */
  readonly find: (inputs: Inputs) => Promise<Uint8Array | undefined>
  /** Keep what these inputs yield for the next build. */
  readonly keep: (inputs: Inputs, bytes: Uint8Array) => Promise<void>
  /** Remove the entries no paper of this build has asked for. */
  readonly prune: () => Promise<void>
}

/** Papers kept in a folder, which is made when the first is written. */
export function paperCache(folder: string): PaperCache {
  const used = new Set<string>()
  const find = (inputs: Inputs) => {
    const key = keyOf(inputs)
    used.add(key)
    return readEntry(join(folder, key), key)
  }
  const keep = (inputs: Inputs, bytes: Uint8Array) => writeEntry(folder, keyOf(inputs), bytes)
  return {
    find,
    keep,
    paper: async (inputs, render) => {
      const kept = await find(inputs)
      if (kept) return kept
      const bytes = await render()
      await keep(inputs, bytes)
      return bytes
    },
    prune: () => prune(folder, used)
  }
}

/** Each input by its own hash, so that no two lists of inputs run together. */
const keyOf = (inputs: Inputs): string => sha256(inputs.map(input => sha256(input)).join('\n'))

async function readEntry(path: string, key: string): Promise<Uint8Array | undefined> {
  try {
    const entry = await readFile(path)
    const bytes = entry.subarray(CHECKSUM_LENGTH)
    const checksum = entry.subarray(0, CHECKSUM_LENGTH).toString('latin1')
    return checksum === sha256(key, bytes) ? bytes : undefined
  } catch (error) {
    if (isMissing(error)) return undefined
    throw error
  }
}

async function writeEntry(folder: string, key: string, bytes: Uint8Array): Promise<void> {
  await mkdir(folder, { recursive: true })
  const path = join(folder, key)
  const draft = `${path}.${process.pid}`
  await writeFile(draft, Buffer.concat([Buffer.from(sha256(key, bytes), 'latin1'), bytes]))
  await rename(draft, path)
}

async function prune(folder: string, used: ReadonlySet<string>): Promise<void> {
  const names = await readdir(folder).catch((error: unknown) => {
    if (isMissing(error)) return []
    throw error
  })
  for (const name of names) if (!used.has(name)) await rm(join(folder, name), { force: true })
}
