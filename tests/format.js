/** `npm run format`: which files are not formatted as the others are; what was found right is kept. */

import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

const require = createRequire(import.meta.url)
const prettier = join(dirname(require.resolve('prettier/package.json')), 'bin', 'prettier.cjs')

const files = [
  '{src,tests,bin}/**/*.{ts,js}',
  '*.ts',
  '{package,tsconfig}.json',
  'templates/**/*.{css,js}'
]
const kept = join('node_modules', '.cache', 'lotfolio', 'formatted')
const unchanged = ['--cache', '--cache-strategy', 'content', '--cache-location', kept]
const args = [prettier, '--check', ...unchanged, '--log-level', 'warn', ...files]
process.exitCode = spawnSync(process.execPath, args, { stdio: 'inherit' }).status ?? 1
