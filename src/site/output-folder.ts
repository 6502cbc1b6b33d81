/** Which folders a site may be written to: never over, into or around anything that is not ours. */

import { realpathSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path'
import { Failure, isMissing } from './failure.ts'
import { isKept } from './kept.ts'
import { type Edition, readMarker } from './marker.ts'

/** The real path of a folder that need not exist yet: links in its existing part are followed. */
export function realFolder(folder: string): string {
  const path = resolve(folder)
  try {
    return realpathSync.native(path)
  } catch {
    return dirname(path) === path ? path : join(realFolder(dirname(path)), basename(path))
  }
}

/** Whether a path is a folder or lies in it. Letter case is ignored, as some disks ignore it. */
export function isWithin(path: string, folder: string): boolean {
  const way = relative(folder.toLowerCase(), path.toLowerCase())
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way))
}

/**
 * Refuse a folder the site must not be written to.
 *
 * @param out real path of the output folder
 * @param sources real paths of the folders the site is made from
 * @throws Failure that says why
 */
export async function refuseUnfit(out: string, sources: readonly string[], edition: Edition) {
  for (const source of sources)
    if (isWithin(source, out) || isWithin(out, source))
      throw new Failure(`${out}: the output must lie outside ${source}, and not around it`)
  refuseMixedNames(out, edition)
  await refuseNesting(out, edition)
  await refuseForeign(out, edition)
}

/** The public edition never goes into private/, nor the workshop edition under _site/. */
function refuseMixedNames(out: string, edition: Edition): void {
  const barred = edition === 'public' ? 'private' : '_site'
  const way = relative(realFolder('.'), out).toLowerCase().split(sep)
  if (way.includes(barred) || basename(out).toLowerCase() === barred)
    throw new Failure(`${out}: the ${edition} edition is never written into ${barred}`)
}

async function refuseNesting(out: string, edition: Edition): Promise<void> {
  for (let above = dirname(out); above !== dirname(above); above = dirname(above)) {
    const found = await readMarker(above)
    if (found)
      throw new Failure(`${out}: the ${edition} edition must not lie inside the site in ${above}`)
  }
}

async function refuseForeign(out: string, edition: Edition): Promise<void> {
  const names = (await namesIn(out)).filter(name => edition === 'public' || !isKept(name))
  if (names.length === 0) return
  const found = await readMarker(out)
  if (!found)
    throw new Failure(`${out}: is not empty and holds no site of ours; empty it or name another`)
  if (found !== edition)
    throw new Failure(`${out}: holds the ${found} edition; name another folder for the ${edition}`)
  if (names.includes('.git'))
    throw new Failure(`${out}: holds a Git repository, which writing the site would remove`)
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder)
  } catch (error) {
    if (isMissing(error)) return []
    if (error instanceof Error && 'code' in error && error.code === 'ENOTDIR')
      throw new Failure(`${folder}: is a file, not a folder`)
    throw error
  }
}
