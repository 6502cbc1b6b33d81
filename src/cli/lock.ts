/**
 * One writer at a time: a lock file, given back when its holder dies.
 *
 * Node has no locks of the system's own. The file names its holder; where that process is gone, the
 * next one takes the lock over, itself guarded by a second file so that two cannot do so at once.
 */

import { open, readFile, rm, stat } from 'node:fs/promises'
import { hostname } from 'node:os'
import { setTimeout as pause } from 'node:timers/promises'
import { Failure, isMissing } from '../site/failure.ts'

/** How long to wait for another run unless told otherwise, and between looks. */
const PATIENCE_MS = 20_000
const LOOK_MS = 40

/** A guard older than this was left by a run that died within the instant it is held. */
const GUARD_MS = 5_000

/**
 * Do some work while no other run does any under the same lock.
 *
 * @param path of the lock file; its folder exists
 * @param patience_ms how long to wait for another run
 * @throws Failure where another run holds it for long, or a run on another computer
 */
export async function withLock<Result>(
  path: string,
  work: () => Promise<Result>,
  patience_ms = PATIENCE_MS
): Promise<Result> {
  const until = Date.now() + patience_ms
  while (!(await create(path))) {
    const holder = await holderOf(path)
    if (holder !== undefined && isDead(holder)) await takeAway(path, holder)
    else if (Date.now() > until) throw held(path, holder)
    else await pause(LOOK_MS)
  }
  try {
    await removeStale(guardOf(path))
    return await work()
  } finally {
    await rm(path, { force: true })
  }
}

const nameOfThis = () => `${hostname()} ${process.pid}`

/** Whether the file was not there, and is now ours. One that a full disk leaves empty goes again. */
async function create(path: string): Promise<boolean> {
  const file = await openNew(path)
  if (!file) return false
  try {
    await file.writeFile(nameOfThis())
  } catch (error) {
    await rm(path, { force: true })
    throw error
  } finally {
    await file.close()
  }
  return true
}

async function openNew(path: string) {
  try {
    return await open(path, 'wx')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return undefined
    throw error
  }
}

/** What the file says; a file made a moment ago may still say nothing. */
async function holderOf(path: string): Promise<string | undefined> {
  try {
    const text = await readFile(path, 'utf8')
    const { mtimeMs } = await stat(path)
    return text === '' && Date.now() - mtimeMs < GUARD_MS ? undefined : text
  } catch (error) {
    if (isMissing(error)) return undefined
    throw error
  }
}

/** A process of this computer that runs no more, or a file whose writer died before it could say who. */
function isDead(holder: string): boolean {
  if (holder === '') return true
  const [host, id] = holder.split(' ')
  if (host !== hostname()) return false
  if (Number(id) === process.pid) return true
  try {
    process.kill(Number(id), 0)
    return false
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ESRCH'
  }
}

/** Remove a dead run's lock, unless another has done so and holds it now. */
async function takeAway(path: string, holder: string): Promise<void> {
  const guard = guardOf(path)
  if (!(await create(guard))) {
    await removeStale(guard)
    return pause(LOOK_MS)
  }
  if ((await holderOf(path)) === holder) await rm(path, { force: true })
  await rm(guard, { force: true })
}

const guardOf = (path: string) => `${path}-guard`

async function removeStale(guard: string): Promise<void> {
  const { mtimeMs } = await stat(guard).catch(() => ({ mtimeMs: Date.now() }))
  if (Date.now() - mtimeMs > GUARD_MS) await rm(guard, { force: true })
}

function held(path: string, holder = 'another run'): Failure {
  const [host, id] = holder.split(' ')
  const who = host === hostname() || id === undefined ? `process ${id ?? holder}` : `${host}`
  return new Failure(
    `${path}: held by ${who}; wait for it, or remove this file if nothing of Lotfolio runs there`
  )
}
