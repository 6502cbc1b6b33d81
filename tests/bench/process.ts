/** A program run to its end in a process of its own, its time and peak memory noted. */

import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import type { SourceFile } from '../../src/problem.ts'

/** What a run took. */
export interface Cost {
  readonly peak_MB: number
  readonly time_s: number
}

/**
 * Prints the process's own peak when it ends, in KiB. Linux counts as the most a process took also what
 * the one that started it had taken until then; the high-water mark of its own memory it keeps apart.
 */
const WATCH = `
  import { existsSync, readFileSync } from 'node:fs'
  const status = '/proc/self/status'
  const own = () => /VmHWM:\\s+(\\d+) kB/.exec(readFileSync(status, 'utf8'))[1]
  const peak = () => (existsSync(status) ? own() : process.resourceUsage().maxRSS)
  process.on('exit', () => process.stderr.write('peak ' + peak() + '\\n'))`

/** What npm has its scripts load is no part of either side. */
const { NODE_OPTIONS: _, ...environment } = process.env

/** @param args of Node: a script and what it is given */
export function costOf(args: readonly string[], cwd = process.cwd()): Cost {
  const watch = `data:text/javascript,${encodeURIComponent(WATCH)}`
  const start = performance.now()
  const { stderr, status } = spawnSync(process.execPath, ['--import', watch, ...args], {
    cwd,
    encoding: 'utf8',
    env: environment
  })
  const peak = /peak (\d+)/u.exec(stderr)?.[1]
  if (status !== 0 || peak === undefined) throw new Error(`${args[0]} failed:\n${stderr}`)
  return { peak_MB: Number(peak) / 1024, time_s: (performance.now() - start) / 1000 }
}

/** Do something in a folder that is gone afterwards. */
export function inFolder<Value>(act: (folder: string) => Value): Value {
  const folder = mkdtempSync(join(tmpdir(), 'lotfolio-bench-'))
  try {
    return act(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Write files below a folder. */
export function writeFiles(folder: string, files: readonly SourceFile[]): void {
  for (const { path, text } of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
}

/** The whole build of the records below a folder, to its `_site`. */
export const buildCost = (folder: string): Cost =>
  costOf([
    'bin/lotfolio.js',
    'build',
    '--content',
    join(folder, 'content'),
    '--out',
    join(folder, '_site')
  ])
