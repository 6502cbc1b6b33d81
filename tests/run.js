/**
 * `npm test`: types and the tests, side by side; arguments go to vitest. A script of Node's
 * own rather than a line for a shell, as Windows and the others have no shell in common.
 */

import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

const require = createRequire(import.meta.url)

/** What was found of a file is kept until that file, or one it takes types from, changes. */
const kept = join('node_modules', '.cache', 'lotfolio')
/** By one thread: several look at the same types again, and the tests take the other core. */
const checked = name => [
  ...['--noEmit', '--singleThreaded'],
  ...['--incremental', '--tsBuildInfoFile', join(kept, name)]
]

const programs = [
  ['typescript-7', 'bin/tsc', checked('types')],
  ['typescript-7', 'bin/tsc', ['-p', 'src/browser', ...checked('types-of-browser')]],
  ['vitest', 'vitest.mjs', ['run', ...process.argv.slice(2)]]
]

// What npm sets for scripts, the programs under test must do without.
const { NODE_OPTIONS: _, INIT_CWD: __, ...environment } = process.env

/** Run a program to its end, its words kept together where others speak too; returns its exit code. */
async function run([name, file, args]) {
  const program = join(dirname(require.resolve(`${name}/package.json`)), file)
  const stdio = name === 'vitest' ? 'inherit' : ['ignore', 'pipe', 'pipe']
  const child = spawn(process.execPath, [program, ...args], { stdio, env: environment })
  let said = ''
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', part => (said += part))
  const [status] = await once(child, 'close')
  if (said) process.stdout.write(`\n${name}:\n${said}\n`)
  return status ?? 1
}

const statuses = await Promise.all(programs.map(run))
const failed = programs.flatMap(([name], index) => (statuses[index] === 0 ? [] : [name]))
if (failed.length > 0) {
  process.stderr.write(`failed: ${failed.join(', ')}\n`)
  process.exitCode = 1
}
