/**
 * `npm test`: types, formatting, then the tests; arguments go to vitest. A script of Node's own rather
 * than a line for a shell, as Windows and the others have no shell in common.
 */

import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

const require = createRequire(import.meta.url)

const formatted = [
  '{src,tests,bin}/**/*.{ts,js}',
  '*.ts',
  '{package,tsconfig}.json',
  'templates/**/*.{css,js}'
]

const programs = [
  ['typescript', 'bin/tsc', ['--noEmit']],
  ['prettier', 'bin/prettier.cjs', ['--check', '--log-level', 'warn', ...formatted]],
  ['vitest', 'vitest.mjs', ['run', ...process.argv.slice(2)]]
]

// What npm sets for scripts, the programs under test must do without.
const { NODE_OPTIONS: _, INIT_CWD: __, ...environment } = process.env

for (const [name, file, args] of programs) {
  const program = join(dirname(require.resolve(`${name}/package.json`)), file)
  const { status } = spawnSync(process.execPath, [program, ...args], {
    stdio: 'inherit',
    env: environment
  })
  if (status !== 0) process.exit(status ?? 1)
}
