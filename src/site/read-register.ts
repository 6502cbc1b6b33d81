/** The register as it lies on disk: the log, and what each issued certificate says. */

import { readdir, readFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import type { RegisterFiles } from '../documents/issued.ts'
import type { LogFiles } from '../documents/log-files.ts'
import { isMissing, plainFault } from './failure.ts'

/** Folder of the register in a content folder, and its log there. */
export const registerFolder = 'register'
export const logName = 'log.jsonl'

/** Folder of the customers' copies in the register's. */
export const copiesFolder = 'copies'

/** Put after the name of a document until the log knows it. */
export const pendingEnd = '.pending'

/** How often a register that is being written to is read anew. */
const TRIES = 20

/**
 * Read the register of a content folder, and the customers' copies, each as it stood at one moment:
 * what a command adds meanwhile is either wholly in it or not at all.
 *
 * @param base folder the paths of the logs are written from
 */
export async function readRegister(content: string, base = process.cwd()): Promise<RegisterFiles> {
  const folder = join(content, registerFolder)
  return {
    ...(await readStill(folder, base)),
    copies: await readStill(join(folder, copiesFolder), base)
  }
}

async function readStill(folder: string, base: string): Promise<LogFiles> {
  const path = relative(base, join(folder, logName)).replaceAll('\\', '/')
  try {
    for (let left = TRIES; ; left--) {
      const names = await namesIn(folder)
      const read = await readOnce(folder, names, path).catch((error: unknown) => {
        // A file that got its own name since it was listed.
        if (isMissing(error) && left > 0) return undefined
        throw error
      })
      const isStill = String(await namesIn(folder)) === String(names)
      if (read && (left === 0 || (isStill && (await logIn(folder)) === read.log.text))) return read
    }
  } catch (error) {
    throw plainFault(error)
  }
}

async function readOnce(folder: string, names: readonly string[], path: string): Promise<LogFiles> {
  return {
    log: { path, text: await logIn(folder) },
    documents: await documentsIn(folder, names, ''),
    pending: await documentsIn(folder, names, pendingEnd)
  }
}

async function logIn(folder: string): Promise<string> {
  try {
    return await readFile(join(folder, logName), 'utf8')
  } catch (error) {
    if (isMissing(error)) return ''
    throw error
  }
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    const names = await readdir(folder)
    return names.filter(name => name.endsWith('.json') || name.endsWith(pendingEnd)).sort()
  } catch (error) {
    if (isMissing(error)) return []
    throw error
  }
}

/** Documents that end in `end`, by their own name. */
async function documentsIn(
  folder: string,
  names: readonly string[],
  end: string
): Promise<Map<string, string>> {
  const documents = new Map<string, string>()
  for (const name of names)
    if (name.endsWith(`.json${end}`))
      documents.set(
        name.slice(0, name.length - end.length),
        await readFile(join(folder, name), 'utf8')
      )
  return documents
}
