/** The register as it lies on disk: the log, and what each issued certificate says. */

import { readdir, readFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import type { RegisterFiles } from '../documents/issued.ts'
import { isMissing, plainFault } from './failure.ts'

/** Folder of the register in a content folder, and its log there. */
export const registerFolder = 'register'
export const logName = 'log.jsonl'

/** Put after the name of a document until the log knows it. */
export const pendingEnd = '.pending'

/**
 * Read the register of a content folder.
 *
 * @param base folder the log's path is written from
 */
export async function readRegister(content: string, base = process.cwd()): Promise<RegisterFiles> {
  const folder = join(content, registerFolder)
  try {
    const names = await namesIn(folder)
    const path = relative(base, join(folder, logName)).replaceAll('\\', '/')
    const text = names.includes(logName) ? await readFile(join(folder, logName), 'utf8') : ''
    return {
      log: { path, text },
      documents: await documentsIn(folder, names, ''),
      pending: await documentsIn(folder, names, pendingEnd)
    }
  } catch (error) {
    throw plainFault(error)
  }
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return (await readdir(folder)).sort()
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
