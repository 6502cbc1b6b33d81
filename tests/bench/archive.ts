/** Finding lots in a browser: what is loaded for it, and how long an answer to a key takes. */

import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import { launchChromium } from '../browser/chromium.ts'
import { type Answer, answersTo, type Doing, within } from './answers.ts'
import { writeArchive } from './archive-lots.ts'

/**
 * What a page may load for 10,000 lots, compressed, and within how long 95 of 100 answers must be
 * painted; all that an answer costs the page's thread is held to the same, so that keys never queue.
 */
const MOST_kB = 200
const MOST_ms = 50

const doings: readonly Doing[] = [
  { id: 'find-text', types: 'FL-31-0' },
  { id: 'find-text', types: 'released foil' },
  { id: 'find-text', types: 'ct-30-00' },
  { id: 'find-text', types: '12' },
  { id: 'find-foil-density-from', types: '0.985' },
  { id: 'find-foil-density-to', types: '1.01' },
  { id: 'find-expansion-volume-from', types: '260' },
  { id: 'find-order', chooses: ['thickness', 'thickness down', 'lot', 'grade', 'made down'] },
  { id: 'find-year', chooses: ['2031', '2030', ''] },
  { id: 'find-grade', chooses: ['foil-100', 'flake-150', ''] }
]

export async function benchArchive(count: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'lotfolio-bench-'))
  const browser = await launchChromium()
  try {
    await writeArchive(count, folder)
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
    const loaded = new Set<string>()
    const start = `${pathToFileURL(folder).href}/`
    page.on('request', request => loaded.add(request.url().slice(start.length)))
    await page.goto(`${start}lots/index.html`)
    await page.focus('#find-text')
    await page.waitForSelector('#found tbody b')
    await page.waitForLoadState('networkidle')
    const [kB, list_kB] = [sizeOf(folder, loaded), sizeOf(folder, new Set(['archive/lots.js']))]
    const load = `${kB.toFixed(0)} kB compressed in ${loaded.size} files`
    // Figures are loaded, and code is compiled, the first time.
    await answersTo(page, doings)
    const plain = [...(await answersTo(page, doings)), ...(await answersTo(page, doings))]
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: 4 })
    const slow = await answersTo(page, doings)
    return [
      `Finding lots, ${count} lots: ${load} ${verdictOn(kB, MOST_kB)}, list alone ${list_kB.toFixed(0)} kB`,
      ...report(plain, slow)
    ].join('\n')
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true })
  }
}

const sizeOf = (folder: string, files: ReadonlySet<string>): number =>
  [...files]
    .filter(file => !file.startsWith('data:'))
    .reduce((sum, file) => sum + gzipSync(readFileSync(join(folder, file))).length / 1000, 0)

const verdictOn = (value: number, target: number) =>
  `(target ≤ ${target}: ${value <= target ? 'met' : 'missed'})`

function report(plain: readonly Answer[], slow: readonly Answer[]): string[] {
  const line = (name: string, answers: readonly Answer[], watch: keyof Answer, target?: number) => {
    const [middle, most, longest] = [0.5, 0.95, 1].map(part => within(answers, watch, part))
    const times = [middle, most, longest].map(time => time!.toFixed(1).padStart(8))
    const verdict = target === undefined ? '' : ` ${verdictOn(most!, target)}`
    return `  ${name.padEnd(44)}${times.join('')}${verdict}`
  }
  return [
    `  ${`${plain.length} keys and choices, ms`.padEnd(44)}${['middle', '95 %', 'longest'].map(name => name.padStart(8)).join('')}`,
    line('from the event to the next frame painted', plain, 'painted', MOST_ms),
    line('  of it our own script', plain, 'script'),
    line("processor's time of the page's thread, in all", plain, 'processor', MOST_ms),
    line('on a processor slowed four times: painted', slow, 'painted'),
    line('  of it our own script', slow, 'script')
  ]
}
