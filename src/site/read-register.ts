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

/** Ends of the names of what lies beside a log: documents, signatures of PDFs, either on its way. */
const kept = ['.json', '.p7s', pendingEnd]

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
  const documents = (end: string) =>
    filesIn(folder, names, `.json${end}`, file => readFile(file, 'utf8'))
  const signatures = (end: string) => filesIn(folder, names, `.p7s${end}`, file => readFile(file))
  return {
    log: { path, text: await logIn(folder) },
    documents: await documents(''),
    pending: await documents(pendingEnd),
    signatures: { own: await signatures(''), pending: await signatures(pendingEnd) }
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
    return names.filter(name => kept.some(end => name.endsWith(end))).sort()
  } catch (error) {
    if (isMissing(error)) return []
    throw error
  }
}

/** Files whose names end in `end`, by their own name. */
async function filesIn<Content>(
  folder: string,
  names: readonly string[],
  end: string,
  read: (path: string) => Promise<Content>
): Promise<Map<string, Content>> {
  const files = new Map<string, Content>()
  for (const name of names)
    if (name.endsWith(end)) files.set(ownName(name), await read(join(folder, name)))
  return files
}

const ownName = (name: string): string =>
  name.endsWith(pendingEnd) ? name.slice(0, -pendingEnd.length) : name
