/** Every file of a site has one path, and one that lies in the site. */

import { posix } from 'node:path'

/**
 * A register of a site's files: it refuses two at one path, or at paths that a disk blind to letter
 * case would take for one.
 *
 * @returns takes further paths, relative to the site's folder, with forward slashes; it throws an
 *   Error that names the paths: records cannot cause it, so it is a fault of the program
 */
export function pathRegister(): (paths: readonly string[]) => void {
  const taken = new Map<string, string>()
  const take = (path: string) => {
    const plain = posix.normalize(path)
    if (plain.startsWith('..') || posix.isAbsolute(plain) || plain.includes('\\'))
      throw new Error(`a file of the site would lie outside it: ${path}`)
    const key = plain.normalize('NFC').toLowerCase()
    const other = taken.get(key)
    if (other !== undefined)
      throw new Error(`two files of the site have one path: ${other}, ${path}`)
    taken.set(key, path)
  }
  return paths => paths.forEach(take)
}
