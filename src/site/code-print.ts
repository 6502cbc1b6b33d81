/** Fingerprint of code and of all it rests on: changes whenever the same input might come out otherwise. */

import { createHash } from 'node:crypto'
import { readdir, readFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { projectFolder } from './project.ts'

/**
 * Fingerprint of every file under some folders. The lock file stands for the packages, fonts among
 * them, and Node's version for what Node does.
 *
 * @param folders absolute
 */
export async function codePrint(folders: readonly string[]): Promise<string> {
  const hash = createHash('sha256').update(process.version)
  const files = [join(projectFolder, 'package-lock.json')]
  for (const folder of folders) files.push(...(await filesUnder(folder)))
  for (const file of files)
    hash.update(`\n${relative(projectFolder, file)}\n`).update(await readFile(file))
  return hash.digest('hex')
}

async function filesUnder(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true })
  return entries
    .filter(entry => entry.isFile())
    .map(entry => join(entry.parentPath, entry.name))
    .sort()
}
