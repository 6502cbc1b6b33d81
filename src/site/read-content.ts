/** The content folder as text: every record file under it. */

import { readdir, readFile, realpath, stat } from 'node:fs/promises'
import { join, relative } from 'node:path'
import type { SourceFile } from '../problem.ts'
import { Failure, isMissing, plainFault } from './failure.ts'

/** Files open at once: systems allow a process some hundreds, and a workshop may have thousands. */
const FILES_AT_A_TIME = 50

/**
 * Records as last read, while something still holds them. A file that says the same is the same object
 * again, so that what was worked out of it need not be once more: while pages are served, most files stay.
 */
const lastRead = new Map<string, WeakRef<SourceFile>>()

function asBefore(path: string, text: string): SourceFile {
  const before = lastRead.get(path)?.deref()
  if (before?.text === text) return before
  const file = { path, text }
  lastRead.set(path, new WeakRef(file))
  return file
}

/**
 * Every *.yaml and *.yml file under a folder, in the order of their paths.
 *
 * Files whose name starts with a dot are editors' own and are left out; a byte order mark is dropped.
 *
 * @param folder absolute, or relative to the current folder
 * @param base folder the paths are written from, with forward slashes; the current one by default
 * @throws Failure where the folder or a file in it cannot be read as UTF-8 text
 */
export async function readContent(folder: string, base = process.cwd()): Promise<SourceFile[]> {
  const paths = await recordPaths(folder)
  if (paths.length === 0) throw new Failure(`${folder}: holds no record (*.yaml)`)
  const read = async (path: string): Promise<SourceFile> =>
    asBefore(relative(base, path).replaceAll('\\', '/'), await readText(path))
  const files: SourceFile[] = []
  for (let from = 0; from < paths.length; from += FILES_AT_A_TIME)
    files.push(...(await Promise.all(paths.slice(from, from + FILES_AT_A_TIME).map(read))))
  return files.sort((a, b) => (a.path < b.path ? -1 : 1))
}

async function recordPaths(folder: string): Promise<string[]> {
  try {
    return await walk(folder, [])
  } catch (error) {
    throw readFault(error, folder)
  }
}

/** Record files under a folder; `above` holds the folders walked through, against links in a ring. */
async function walk(folder: string, above: readonly string[]): Promise<string[]> {
  const here = await realpath(folder)
  if (above.includes(here)) return []
  const names = (await readdir(folder)).filter(name => !name.startsWith('.'))
  const found = await Promise.all(
    names.map(async name => {
      const path = join(folder, name)
      if ((await stat(path)).isDirectory()) return walk(path, [...above, here])
      return /\.ya?ml$/iu.test(name) ? [path] : []
    })
  )
  return found.flat()
}

async function readText(path: string): Promise<string> {
  const bytes = await readFile(path).catch((error: unknown) => {
    throw readFault(error, path)
  })
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Failure(`${path}: is not UTF-8 text; save it with the encoding UTF-8`)
  }
}

function readFault(error: unknown, path: string): unknown {
  // What is missing may lie further in: a link whose file is gone.
  if (isMissing(error)) return new Failure(`${pathOf(error) ?? path}: does not exist`)
  return plainFault(error)
}

const pathOf = (error: unknown): string | undefined =>
  error instanceof Error && 'path' in error && typeof error.path === 'string'
    ? error.path
    : undefined
