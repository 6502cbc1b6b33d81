#!/usr/bin/env node
/**
 * Starts the program, which is TypeScript: as one bundle, or through tsx where none can be kept. Both
 * run the same code; a bundle starts in half the time and takes half the memory.
 */

import { setFlagsFromString } from 'node:v8'
import { bundleOf, SMALL_NURSERY } from './bundle.js'

setFlagsFromString(SMALL_NURSERY)
process.setSourceMapsEnabled(true)

const { main } = await import((await bundleOf(new URL('..', import.meta.url))) ?? (await source()))
await main(process.argv.slice(2))

async function source() {
  try {
    const { register } = await import('tsx/esm/api')
    register()
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error
    process.stderr.write('lotfolio: its packages are not installed; run npm ci first\n')
    process.exit(1)
  }
  return '../src/cli/main.ts'
}
