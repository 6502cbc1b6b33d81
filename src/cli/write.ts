/** Files a command writes beside the site. */

import { mkdir, writeFile } from 'node:fs/promises'
import { dirname } from 'node:path'
import { Failure, plainFault } from '../site/failure.ts'

/**
 * Write a file that must not be there yet, with the folders it needs.
 *
 * @throws Failure where it is there, or the disk refuses it
 */
export const writeNew = (path: string, content: string): Promise<void> => write(path, content, 'wx')

/**
 * Write a file over the one before, with the folders it needs.
 *
 * @throws Failure where the disk refuses it
 */
export const writeOver = (path: string, content: string | Uint8Array): Promise<void> =>
  write(path, content, 'w')

async function write(path: string, content: string | Uint8Array, flag: 'w' | 'wx'): Promise<void> {
  try {
    await mkdir(dirname(path), { recursive: true })
    await writeFile(path, content, { flag })
  } catch (error) {
    throw writeFault(error, path)
  }
}

/** A file in the way of a folder is told as such: EEXIST where it is the last step, ENOTDIR before. */
function writeFault(error: unknown, path: string): unknown {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  const at = error instanceof Error && 'path' in error ? String(error.path) : path
  if (code === 'EEXIST' && at === path) return new Failure(`${path}: is already there`)
  if (code === 'EEXIST' || code === 'ENOTDIR') return new Failure(`${at}: is not a folder`)
  if (code === 'EISDIR') return new Failure(`${path}: is a folder, where a file should go`)
  return plainFault(error)
}
