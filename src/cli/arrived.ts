/** A file that somebody brings: its bytes, its fingerprint, and when it was written. */

import { createHash } from 'node:crypto'
import { readFile, stat } from 'node:fs/promises'
import { basename, relative, resolve } from 'node:path'
import type { Arrived } from '../intake/mappings.ts'
import type { Source } from '../intake/take-over.ts'
import { Failure, isMissing, plainFault } from '../site/failure.ts'
import { LARGEST_FILE } from '../tables/read-sheet.ts'
import { userFolder } from './folders.ts'

export interface ArrivedFile extends Arrived {
  readonly source: Source
}

/**
 * Read a file to import.
 *
 * @param written when it was written, where the file system does not know
 * @throws Failure where it is not there, no file, or too large to be a list of readings
 */
export async function arrivedFile(
  typed: string,
  written: string | undefined
): Promise<ArrivedFile> {
  const path = resolve(userFolder(process.env), typed)
  try {
    const found = await stat(path)
    if (!found.isFile()) throw new Failure(`${typed}: is no file`)
    if (found.size > LARGEST_FILE)
      throw new Failure(
        `${typed}: has ${Math.round(found.size / 1e6)} MB, more than any list of readings; export the part needed`
      )
    const bytes = await readFile(path)
    const saved = `${found.mtime.toISOString().slice(0, 19).replace('T', ' ')}Z`
    return {
      path: relative(userFolder(process.env), path).replaceAll('\\', '/'),
      bytes,
      source: {
        file: basename(path),
        sha256: createHash('sha256').update(bytes).digest('hex'),
        written: written ?? saved
      }
    }
  } catch (error) {
    if (isMissing(error)) throw new Failure(`${typed}: does not exist`)
    throw plainFault(error)
  }
}
