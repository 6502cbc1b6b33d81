/** The scripts of the pages: each one classic file, so that a page opened from disk may load it. */

import { readFile, rename, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { build } from 'esbuild'
import { projectFolder } from './project.ts'

/** Each script's address, and the file of src/browser/ that it begins in. */
const scripts: Readonly<Record<string, string>> = {
  'assets/verify.js': 'verify-page.ts',
  'assets/archive.js': 'archive-page.ts',
  'assets/compare.js': 'compare-page.ts',
  'assets/choose.js': 'choose-page.ts'
}

/** Addresses of the scripts. */
export const scriptPaths = Object.keys(scripts)

export interface ScriptFile {
  readonly path: string
  readonly text: string
}

/**
 * Where their texts are kept between runs: beside the bundle the program runs from, which is of one state
 * of the source. Undefined for a program that runs from its source, as that may change meanwhile.
 */
const keptFile = basename(import.meta.dirname).startsWith('.lotfolio-')
  ? join(import.meta.dirname, 'scripts-of-pages.json')
  : undefined

let made: Promise<readonly ScriptFile[]> | undefined

/** Their texts, each with all it needs; bundled once, as that takes as long as the pages of a small site. */
export const scriptFiles = (): Promise<readonly ScriptFile[]> => (made ??= kept())

async function kept(): Promise<readonly ScriptFile[]> {
  if (keptFile === undefined) return bundled(scripts)
  const text = await readFile(keptFile, 'utf8').catch(() => undefined)
  if (text !== undefined) return JSON.parse(text) as ScriptFile[]
  const files = await bundled(scripts)
  // Whole or not at all; a folder that may not be written to costs time, nothing else.
  const fresh = `${keptFile}.${process.pid}`
  await writeFile(fresh, JSON.stringify(files))
    .then(() => rename(fresh, keptFile))
    .catch(() => undefined)
  return files
}

/** The script that `lotfolio start` puts into the pages it serves; no site holds it. */
export async function liveScript(): Promise<string> {
  const [file] = await bundled({ 'assets/live.js': 'live.ts' })
  return file!.text
}

async function bundled(entries: Readonly<Record<string, string>>): Promise<ScriptFile[]> {
  const folder = join(projectFolder, 'src', 'browser')
  const { outputFiles } = await build({
    entryPoints: Object.entries(entries).map(([path, file]) => ({
      in: join(folder, file),
      out: basename(path, '.js')
    })),
    outdir: 'assets',
    absWorkingDir: projectFolder,
    bundle: true,
    format: 'iife',
    target: 'es2022',
    minify: true,
    charset: 'utf8',
    legalComments: 'none',
    write: false,
    logLevel: 'silent'
  })
  return outputFiles.map(({ path, text }) => ({ path: `assets/${basename(path)}`, text }))
}
