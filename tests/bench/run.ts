/**
 * npm run bench: what Lotfolio costs over the least that anything doing the same would cost, both
 * measured in this run. `--lots N` sizes it; `--plain` compares a whole build with plain Eleventy
 * instead, which for 10,000 lots takes many minutes.
 */

import { parseArgs } from 'node:util'
import { benchCheck } from './check.ts'
import { benchHtml } from './html.ts'
import { benchMemory } from './memory.ts'
import { benchPdf } from './pdf.ts'
import { benchPlain } from './plain.ts'

const { values } = parseArgs({
  options: { lots: { type: 'string', default: '1000' }, plain: { type: 'boolean', default: false } }
})
const lots = Number(values.lots)
if (!Number.isInteger(lots) || lots < 1) {
  process.stderr.write('bench: --lots takes a whole number of at least 1\n')
  process.exit(2)
}
const benches = values.plain ? [benchPlain] : [benchCheck, benchHtml, benchPdf, benchMemory]
for (const bench of benches) process.stdout.write(`${await bench(lots)}\n\n`)
