/** Programs of the system that some tests need. */

import { spawnSync } from 'node:child_process'
import { accessSync, constants } from 'node:fs'
import { delimiter, isAbsolute, join } from 'node:path'

/**
 * Whether a program, or a file given by its full path, is installed.
 *
 * Where it is missing, a developer's run says so and goes on without; in CI it fails, so that no
 * check is left out unseen.
 *
 * @throws Error naming the Debian package, where it is missing and CI is set
 */
export function requireTool(name: string, debianPackage: string): boolean {
  if (findTool([name]) !== undefined) return true
  const message = `${name} is missing: apt-get install ${debianPackage}`
  if (process.env['CI']) throw new Error(message)
  console.warn(`\nSKIPPED TESTS: ${message}\n`)
  return false
}

/** Where the first of some programs is that is installed. */
export const findTool = (names: readonly string[]): string | undefined =>
  names.flatMap(placesOf).find(isThere)

function placesOf(name: string): string[] {
  if (isAbsolute(name)) return [name]
  const folders = (process.env['PATH'] ?? '').split(delimiter).filter(folder => folder !== '')
  return folders.map(folder => join(folder, name))
}

function isThere(path: string): boolean {
  try {
    accessSync(path, isJar(path) ? constants.R_OK : constants.X_OK)
    return true
  } catch {
    return false
  }
}

const isJar = (path: string): boolean => path.endsWith('.jar')

/**
 * Whether Python has a module, found out by asking it.
 *
 * @returns the Python that has it; undefined on a desk where none has
 * @throws Error naming the Debian package, where it is missing and CI is set
 */
export function requirePython(modules: readonly string[], debianPackages: string) {
  const imports = modules.map(name => `import ${name}`).join('\n')
  // Another Python than Debian's may stand first on the path.
  const found = ['python3', '/usr/bin/python3'].find(
    python => spawnSync(python, ['-c', imports]).status === 0
  )
  if (found !== undefined) return found
  const message = `Python has not all of ${modules.join(', ')}: apt-get install ${debianPackages}`
  if (process.env['CI']) throw new Error(message)
  console.warn(`\nSKIPPED TESTS: ${message}\n`)
  return undefined
}
