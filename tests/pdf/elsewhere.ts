/** Samples made by a fresh process in another folder, time zone and language. */

import { execFileSync } from 'node:child_process'
import { rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll } from 'vitest'
import { root } from '../root.ts'

/** The bundler of `bin/`, which has no types. */
interface Bundler {
  bundle(root: string, file: string, entry: string, format: 'esm'): Promise<void>
  readonly PREFIX: string
}
const { bundle, PREFIX }: Bundler = await import(pathToFileURL(join(root, 'bin', 'bundle.js')).href)

const folder = join(root, 'node_modules', `${PREFIX}samples-${process.pid}`)
const program = join(folder, 'main.mjs')

/**
 * For the tests of a file, the program that writes a sample, bundled: to take the types out of all its
 * files at each start takes longer.
 */
export function bundleSamples(): void {
  beforeAll(() => bundle(root, program, join('tests', 'pdf', 'write-sample.ts'), 'esm'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
}

/** A sample's bytes, after `bundleSamples`. */
export const madeElsewhere = (
  sample: 'certificate' | 'label',
  timeZone: string,
  locale: string
): Buffer =>
  execFileSync(process.execPath, [program, sample], {
    cwd: tmpdir(),
    env: { ...process.env, TZ: timeZone, LC_ALL: locale, LANG: locale },
    maxBuffer: 1 << 26
  })
