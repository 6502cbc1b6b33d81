/**
 * npm run bench: what Lotfolio costs over the least that anything doing the same would cost, both
 * measured in this run. Names choose benchmarks, `--lots N` sizes them, all but `archive`, which finds
 * lots among 10,000 in a browser. `plain`, which compares a whole build with plain Eleventy and takes
 * many minutes for 10,000 lots, runs only where it is named.
 */

import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { benchArchive } from './archive.ts'
import { benchCheck } from './check.ts'
import { benchHtml } from './html.ts'
import { benchMemory } from './memory.ts'
import { benchPdf } from './pdf.ts'
import { benchPlain } from './plain.ts'

const benches = new Map([
  ['check', benchCheck],
  ['pages', benchHtml],
  ['papers', benchPdf],
  ['memory', benchMemory],
  ['archive', () => benchArchive(10_000)],
  ['plain', benchPlain]
])

const { values, positionals } = parseArgs({
  options: { lots: { type: 'string', default: '1000' } },
  allowPositionals: true
})
const lots = Number(values.lots)
const names =
  positionals.length > 0 ? positionals : ['check', 'pages', 'papers', 'memory', 'archive']
const unknown = names.find(name => !benches.has(name))
if (!Number.isInteger(lots) || lots < 1 || unknown !== undefined) {
  const known = [...benches.keys()].join(', ')
  process.stderr.write(`bench: takes ${known}, and --lots with a whole number of at least 1\n`)
  process.exitCode = 2
} else if (names.length === 1) process.stdout.write(`${await benches.get(names[0]!)!(lots)}\n\n`)
// Each in a process of its own: what one leaves behind is no part of another.
else
  for (const name of names) {
    const args = [join('tests', 'bench', 'start.js'), name, '--lots', String(lots)]
    const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' })
    process.exitCode ||= status ?? 1
  }
