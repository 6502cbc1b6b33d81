/** Files a command writes beside the site. */

import { mkdir, open, rename, rm, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
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

/** Written through to the disk, so that a power cut cannot leave a name without its content. */
export async function writeThrough(path: string, content: string | Uint8Array): Promise<void> {
  const file = await open(path, 'w')
  try {
    await file.writeFile(content)
    await file.sync()
  } finally {
    await file.close()
  }
}

/** A file on its way, in the folder it is for; records whose name begins with a dot are not read. */
const staged = '.lotfolio-next'

/**
 * Write a file that is there whole or not at all, whenever the program is stopped.
 *
 * @throws Failure where the disk refuses it
 */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const next = join(dirname(path), staged)
  try {
    await mkdir(dirname(path), { recursive: true })
    await writeThrough(next, content)
    await rename(next, path)
  } catch (error) {
    await removeStaged(dirname(path))
    throw writeFault(error, path)
  }
}

/** Remove what a stopped run left on its way. */
export const removeStaged = (folder: string): Promise<void> =>
  rm(join(folder, staged), { force: true }).catch(() => undefined)

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
