/**
 * Writing to a register: the log's new text and the documents it speaks of, all or nothing.
 *
 * A document lies under its pending name until the log knows it; the log changes by one rename. A
 * kill before that rename leaves the register as it was, a kill after it leaves it as it should be,
 * and the next run clears up either way.
 */

import { existsSync } from 'node:fs'
import { mkdir, open, readdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { Failure, plainFault } from '../site/failure.ts'
import { logName, pendingEnd, registerFolder } from '../site/read-register.ts'
import { withLock } from './lock.ts'
import { writeThrough } from './write.ts'

/** What a command adds to the register or to a folder in it: the whole new log, and new files beside it by name. */
export interface Addition {
  /** Folder in the register's own; that itself where absent. */
  readonly folder?: string
  readonly log: string
  readonly files: ReadonlyMap<string, string | Uint8Array>
}

/**
 * Work on the register of a content folder while nobody else does.
 *
 * @throws Failure where the content folder is not there or cannot be written, or another run holds it
 */
export async function withRegister<Result>(
  content: string,
  work: (save: (addition: Addition) => Promise<void>) => Promise<Result>
): Promise<Result> {
  const folder = join(content, registerFolder)
  if (!existsSync(content)) throw new Failure(`${content}: does not exist`)
  try {
    await mkdir(folder, { recursive: true })
    return await withLock(join(folder, 'lock'), () =>
      work(addition => saveAll(join(folder, addition.folder ?? ''), addition))
    )
  } catch (error) {
    throw plainFault(error)
  }
}

async function saveAll(folder: string, { log, files }: Addition): Promise<void> {
  await mkdir(folder, { recursive: true })
  for (const [name, content] of files) await writeThrough(join(folder, name + pendingEnd), content)
  const next = join(folder, nextLog)
  await writeThrough(next, log)
  await rename(next, join(folder, logName))
  for (const name of files.keys()) await rename(join(folder, name + pendingEnd), join(folder, name))
  await settle(folder)
}

/** The log's new text until it takes the place of the old one. */
const nextLog = `${logName}.next`

/**
 * Clear up after a run that was stopped: give documents their own name, remove what the log never
 * came to know.
 *
 * @param folder of a log and its documents
 * @param isWanted whether the log names a document that has no file of its own name
 */
export async function finishStopped(
  folder: string,
  isWanted: (name: string) => boolean
): Promise<void> {
  for (const name of await pendingIn(folder)) {
    const path = join(folder, name)
    await (isWanted(name) ? rename(path + pendingEnd, path) : rm(path + pendingEnd))
  }
  await rm(join(folder, nextLog), { force: true })
}

const pendingIn = async (folder: string): Promise<string[]> =>
  (await readdir(folder).catch(() => []))
    .filter(name => name.endsWith(pendingEnd))
    .map(name => name.slice(0, -pendingEnd.length))

/** Make the renames themselves last; systems that cannot sync a folder do without. */
async function settle(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => undefined)
  await handle?.sync().catch(() => undefined)
  await handle?.close()
}
