/** Peak memory of a whole build, in a process of its own. */

import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { generateWorkshop } from './generate.ts'

/** Prints the process's own peak when it ends, in KiB. */
const WATCH = `process.on('exit', () => process.stderr.write('peak ' + process.resourceUsage().maxRSS + '\\n'))`

export function benchMemory(lots: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'lotfolio-memory-'))
  try {
    for (const { path, text } of generateWorkshop(lots)) {
      mkdirSync(dirname(join(folder, path)), { recursive: true })
      writeFileSync(join(folder, path), text)
    }
    const peak = peakOf([
      'build',
      '--content',
      join(folder, 'content'),
      '--out',
      join(folder, '_site')
    ])
    const verdict = `(target ≤ 250 MB at 1000 lots: ${peak <= 250 ? 'met' : 'missed'})`
    return Promise.resolve(
      `Memory, whole build of ${lots} lots: peak ${peak.toFixed(0)} MB ${verdict}`
    )
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function peakOf(args: readonly string[]): number {
  const watch = `data:text/javascript,${encodeURIComponent(WATCH)}`
  const { stderr, status } = spawnSync(
    process.execPath,
    ['--import', watch, 'bin/lotfolio.js', ...args],
    { encoding: 'utf8' }
  )
  const peak = /peak (\d+)/u.exec(stderr)?.[1]
  if (status !== 0 || peak === undefined) throw new Error(`the build failed:\n${stderr}`)
  return Number(peak) / 1024
}
