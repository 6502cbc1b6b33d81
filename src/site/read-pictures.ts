/** The pictures of a content folder: what is known of each, and its bytes as customers get them. */

import { readdir, readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { PictureHead, Pictures } from '../documents/picture-types.ts'
import { isMissing, plainFault } from './failure.ts'
import { plainPicture } from './picture-file.ts'

/** Their folder in a content folder. */
export const picturesFolder = 'pictures'

/** What is known of each picture, by the name of its file; none where there is no such folder. */
export async function readPictures(content: string): Promise<Pictures> {
  const folder = join(content, picturesFolder)
  const found = new Map<string, PictureHead>()
  for (const name of await namesIn(folder)) found.set(name, await headIn(folder, name))
  return found
}

/**
 * A picture without what cameras write into it.
 *
 * @throws RangeError where it cannot be shown: records that name it were refused before
 */
export async function pictureBytes(content: string, name: string): Promise<Uint8Array> {
  const picture = plainPicture(await bytesOf(join(content, picturesFolder), name))
  if ('fault' in picture) throw new RangeError(`${name} ${picture.fault}`)
  return picture.bytes
}

/** Larger files are not even read: a page of one could not be opened. */
const MOST_BYTES = 40_000_000

/** Pictures looked at before in this process: while pages are served, few of them change. */
const seen = new Map<string, { readonly state: string; readonly head: PictureHead }>()

/** What is wrong with a picture is told where a record names it, a link that leads nowhere as well. */
async function headIn(folder: string, name: string): Promise<PictureHead> {
  const path = join(folder, name)
  const found = await stat(path).catch(() => undefined)
  if (!found?.isFile()) return { fault: 'is a link that leads to no file' }
  if (found.size > MOST_BYTES) return { fault: 'is larger than 40 MB' }
  const state = `${found.mtimeMs} ${found.ino} ${found.size}`
  const before = seen.get(path)
  if (before?.state === state) return before.head
  const head = headOf(await bytesOf(folder, name))
  seen.set(path, { state, head })
  return head
}

function headOf(file: Uint8Array): PictureHead {
  const picture = plainPicture(file)
  if ('fault' in picture) return picture
  const { kind, width_px, height_px, bytes } = picture
  return { kind, width_px, height_px, size_bytes: bytes.length }
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    const entries = await readdir(folder, { withFileTypes: true })
    return entries
      .filter(entry => !entry.isDirectory() && !entry.name.startsWith('.'))
      .map(({ name }) => name)
      .sort()
  } catch (error) {
    if (isMissing(error)) return []
    throw plainFault(error)
  }
}

const bytesOf = (folder: string, name: string): Promise<Uint8Array> =>
  readFile(join(folder, name)).catch((error: unknown) => {
    throw plainFault(error)
  })
