/**
 * A new site takes the old one's place as a whole.
 *
 * It is built in `<out>.lotfolio-new-<process>` and marked when complete; then the old site moves to
 * `<out>.lotfolio-old-<process>`, the new one into its place, and the old one is removed. A kill at
 * any instant leaves one of these states, and `recover` knows each.
 */

import { existsSync } from 'node:fs'
import { mkdir, readdir, rename, rm } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { isMissing } from './failure.ts'
import { markerName, readMarker } from './marker.ts'

const nameFor = (out: string, part: 'new' | 'old', id: number) => `${out}.lotfolio-${part}-${id}`

/** An empty folder beside `out` to build its next content in. */
export async function makeTemporary(out: string): Promise<string> {
  const fresh = nameFor(out, 'new', process.pid)
  await removeFolder(fresh)
  await mkdir(fresh, { recursive: true })
  return fresh
}

/** Put a finished site in the place of the one in `out`, if any. */
export async function swapIn(fresh: string, out: string): Promise<void> {
  const old = nameFor(out, 'old', process.pid)
  // Another build's site may arrive between the two renames: then that one is the old site.
  for (let attempt = 1; ; attempt++) {
    await removeFolder(old)
    const moved = await renameIfThere(out, old)
    try {
      await rename(fresh, out)
      break
    } catch (error) {
      if (moved && !existsSync(out)) await rename(old, out)
      if (attempt === 3 || !existsSync(out)) throw error
    }
  }
  // The new site stands; what cannot be removed now, the next build removes.
  await removeFolder(old).catch(() => undefined)
}

/** Finish or undo what a killed build left beside `out`, and clear its temporary folders. */
export async function recover(out: string): Promise<void> {
  const { fresh, old } = await leftovers(out)
  if (old.length > 0 && !existsSync(out)) await restore(out, old)
  for (const id of old) await removeFolder(nameFor(out, 'old', id))
  for (const id of fresh) if (!isOtherProcess(id)) await removeFolder(nameFor(out, 'new', id))
}

/** A build was killed between its two renames: complete the new site's move, or undo the old one's. */
async function restore(out: string, old: readonly number[]): Promise<void> {
  // A process of that number may be in the middle of it, not dead: that lasts an instant.
  if (old.some(isOtherProcess)) await pause(500)
  for (const id of old) {
    for (const folder of [nameFor(out, 'new', id), nameFor(out, 'old', id)])
      if (!existsSync(out) && (await readMarker(folder))) await renameIfThere(folder, out)
  }
}

async function leftovers(out: string): Promise<{ fresh: number[]; old: number[] }> {
  const names = await readdir(dirname(out)).catch((error: unknown) => {
    if (isMissing(error)) return []
    throw error
  })
  const start = `${basename(out)}.lotfolio-`
  const idsOf = (part: string) =>
    names
      .filter(name => name.startsWith(start + part) && /-\d+$/u.test(name))
      .map(name => Number(name.slice(start.length + part.length + 1)))
  return { fresh: idsOf('new'), old: idsOf('old') }
}

/** Whether a process of this number is running that is not this one. */
function isOtherProcess(id: number): boolean {
  if (id === process.pid) return false
  try {
    process.kill(id, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

async function renameIfThere(from: string, to: string): Promise<boolean> {
  try {
    await rename(from, to)
    return true
  } catch (error) {
    if (isMissing(error)) return false
    throw error
  }
}

/** Remove a folder, its marker first: what is left of it after a kill no longer passes for whole. */
export async function removeFolder(folder: string): Promise<void> {
  await rm(join(folder, markerName), { force: true, maxRetries: 3 })
  await rm(folder, { recursive: true, force: true, maxRetries: 3 })
}

/** Empty a site's folder without moving it. */
export async function emptyFolder(folder: string): Promise<void> {
  const names = await readdir(folder).catch((error: unknown) => {
    if (isMissing(error)) return []
    throw error
  })
  for (const name of names) await rm(join(folder, name), { recursive: true, maxRetries: 3 })
}
