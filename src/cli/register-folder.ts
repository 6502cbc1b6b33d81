/**
 * Writing to a register: the log's new text and the documents it speaks of, all or nothing.
 *
 * A document lies under its pending name until the log knows it; the log changes by one rename. A
 * kill before that rename leaves the register as it was, a kill after it leaves it as it should be,
 * and the next run clears up either way.
 */

import { open, readdir, rename, rm } from 'node:fs/promises'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { plainFault } from '../site/failure.ts'
import { logName, pendingEnd, registerFolder } from '../site/read-register.ts'
import { withLock } from './lock.ts'

/** What a command adds: the whole new log, and new documents by file name. */
export interface Addition {
  readonly log: string
  readonly documents: ReadonlyMap<string, string>
}

/**
 * Work on the register of a content folder while nobody else does.
 *
 * @param isKnown whether the log names a document that still lies under its pending name
 * @throws Failure where the folder cannot be written, or another run holds it
 */
export async function withRegister<Result>(
  content: string,
  work: (save: (addition: Addition) => Promise<void>) => Promise<Result>
): Promise<Result> {
  const folder = join(content, registerFolder)
  try {
    await mkdir(folder, { recursive: true })
    return await withLock(join(folder, 'lock'), () => work(addition => saveAll(folder, addition)))
  } catch (error) {
    throw plainFault(error)
  }
}

async function saveAll(folder: string, { log, documents }: Addition): Promise<void> {
  await clearPending(folder)
  for (const [name, text] of documents) await writeWhole(join(folder, name + pendingEnd), text)
  const next = join(folder, `${logName}.next`)
  await writeWhole(next, log)
  await rename(next, join(folder, logName))
  for (const name of documents.keys())
    await rename(join(folder, name + pendingEnd), join(folder, name))
  await settle(folder)
}

/** Give documents the log knows their own name, and remove those it never came to know. */
export async function finishPending(
  content: string,
  isKnown: (name: string) => boolean
): Promise<void> {
  const folder = join(content, registerFolder)
  for (const name of await pendingIn(folder))
    if (isKnown(name)) await rename(join(folder, name + pendingEnd), join(folder, name))
}

async function clearPending(folder: string): Promise<void> {
  for (const name of await pendingIn(folder)) await rm(join(folder, name + pendingEnd))
}

const pendingIn = async (folder: string): Promise<string[]> =>
  (await readdir(folder))
    .filter(name => name.endsWith(pendingEnd))
    .map(name => name.slice(0, -pendingEnd.length))

/** Written through to the disk, so that a power cut cannot leave a name without its content. */
async function writeWhole(path: string, text: string): Promise<void> {
  const file = await open(path, 'w')
  try {
    await file.writeFile(text)
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Make the renames themselves last; systems that cannot sync a folder do without. */
async function settle(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined)
  await handle?.sync().catch(() => undefined)
  await handle?.close()
}
