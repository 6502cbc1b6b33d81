/** Private keys: one file a key, outside everything that is published or put under version control. */

import { existsSync, realpathSync } from 'node:fs'
import { mkdir, readFile, stat, writeFile } from 'node:fs/promises'
import { homedir } from 'node:os'
import { dirname, join, relative, resolve } from 'node:path'
import type { KeyPair } from '../register/keys.ts'
import { Failure, isMissing, plainFault } from '../site/failure.ts'

/** Where private keys lie: LOTFOLIO_KEYS, or a folder of the user's own. */
export function keysFolder(environment: NodeJS.ProcessEnv): string {
  const { LOTFOLIO_KEYS, APPDATA, XDG_CONFIG_HOME } = environment
  if (LOTFOLIO_KEYS) return resolve(LOTFOLIO_KEYS)
  const own = APPDATA ?? XDG_CONFIG_HOME ?? join(homedir(), '.config')
  return join(own, 'lotfolio', 'keys')
}

/**
 * Refuse a folder for private keys that lies in the workshop's records, beside them, or in anything
 * under version control: what lies there is copied and published.
 *
 * @throws Failure
 */
export function refuseInside(folder: string, content: string, hint = HINT): void {
  const real = realPathOf(folder)
  const workshop = realPathOf(dirname(content))
  if (isWithin(real, workshop))
    throw new Failure(`${folder}: private keys must not lie in the workshop's own folder; ${hint}`)
  for (let above = real; above !== dirname(above); above = dirname(above))
    if (existsSync(join(above, '.git')))
      throw new Failure(
        `${folder}: private keys must not lie in a folder under version control; ${hint}`
      )
}

const HINT = 'name another folder in LOTFOLIO_KEYS'

const isWithin = (path: string, folder: string): boolean =>
  !relative(folder, path).startsWith('..') && relative(folder, path) !== path

/** The real place of a path whose last folders may not be there yet. */
export function realPathOf(path: string): string {
  if (existsSync(path)) return realpathSync(path)
  return dirname(path) === path
    ? path
    : join(realPathOf(dirname(path)), path.slice(dirname(path).length))
}

/** Keep a new private key, for its owner's eyes only. */
export async function keepKey(folder: string, { id, privatePem }: KeyPair): Promise<string> {
  const path = join(folder, `${id}.pem`)
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 })
    await writeFile(path, privatePem, { flag: 'wx', mode: 0o600 })
    return path
  } catch (error) {
    throw plainFault(error)
  }
}

/** @throws Failure where the mode of a private key's file lets others read it */
export function refuseOthersReading(path: string, mode: number): void {
  // Windows has no such bits and reports them as open.
  if (process.platform !== 'win32' && (mode & 0o077) !== 0)
    throw new Failure(`${path}: others may read this private key; close it: chmod 600 ${path}`)
}

/**
 * The private half of a key.
 *
 * @returns undefined where this computer does not have it
 * @throws Failure where others may read it
 */
export async function privateKey(folder: string, id: string): Promise<string | undefined> {
  const path = join(folder, `${id}.pem`)
  try {
    const { mode } = await stat(path)
    refuseOthersReading(path, mode)
    return await readFile(path, 'utf8')
  } catch (error) {
    if (isMissing(error)) return undefined
    throw plainFault(error)
  }
}
