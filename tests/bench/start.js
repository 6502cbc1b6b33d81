/** npm run bench: the benchmarks, bundled and run as the program itself is. */

import { rm } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { setFlagsFromString } from 'node:v8'
import { bundle, LATE_OPTIMISER, PREFIX, SMALL_NURSERY } from '../../bin/bundle.js'

setFlagsFromString(LATE_OPTIMISER)
// As the program itself: `check` has the room for new objects that Node gives, what writes a site has not.
if (!process.argv.includes('check')) setFlagsFromString(SMALL_NURSERY)
const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = join(root, 'node_modules', `${PREFIX}bench.${process.pid}`)
try {
  const file = join(folder, 'run.js')
  await bundle(root, file, join('tests', 'bench', 'run.ts'), 'esm')
  await import(pathToFileURL(file).href)
} finally {
  await rm(folder, { recursive: true, force: true })
}
