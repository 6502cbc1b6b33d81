/**
 * npm run bench: what Lotfolio costs over the least that anything doing the same would cost, both
 * measured in this run. `--lots N` sizes it.
 */

import { parseArgs } from 'node:util'
import { benchCheck } from './check.ts'
import { benchHtml } from './html.ts'
import { benchMemory } from './memory.ts'
import { benchPdf } from './pdf.ts'

const { values } = parseArgs({ options: { lots: { type: 'string', default: '1000' } } })
const lots = Number(values.lots)
if (!Number.isInteger(lots) || lots < 1) {
  process.stderr.write('bench: --lots takes a whole number of at least 1\n')
  process.exit(2)
}
for (const bench of [benchCheck, benchHtml, benchPdf, benchMemory])
  process.stdout.write(`${await bench(lots)}\n\n`)
