/** Finding lots in a browser: what is loaded for it, and how long an answer to a key takes. */

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import Eleventy from '@11ty/eleventy'
import type { Page } from 'playwright-core'
import { lotListWriter } from '../../src/data/lot-list.ts'
import { lotLists } from '../../src/documents/lot-lists.ts'
import type { LotPage, ResultRow, SiteDocument } from '../../src/documents/types.ts'
import { lotfolio } from '../../src/site/plugin.ts'
import { steps } from '../../src/site/steps.ts'
import { launchChromium } from '../browser/chromium.ts'
import { lotPage, siteDocument } from '../fixtures/documents.ts'

/** What a page may load for 10,000 lots, compressed, and how long a key may take to be answered. */
const MOST_kB = 200
const MOST_ms = 50

/** Quantities of each product: title, unit, middle, spread, digits behind the point. */
const measured: Readonly<
  Record<'flake' | 'foil', readonly [string, string, number, number, number][]>
> = {
  flake: [
    ['expansion-volume', 'mL/g', 265, 12, 1],
    ['free-acid', '%', 0.05, 0.02, 4],
    ['slurry-ph', '', 4.2, 0.3, 2],
    ['moisture', '%', 0.4, 0.1, 3],
    ['volatile', '%', 14, 1, 2],
    ['ash', '%', 0.6, 0.1, 3],
    ['fixed-carbon', '%', 85, 1, 2],
    ['onset', '°C', 190, 12, 1]
  ],
  foil: [
    ['thickness', 'mm', 0.5, 0.01, 4],
    ['foil-density', 'g/cm³', 1, 0.03, 4],
    ['areal-mass', 'g/m²', 500, 15, 2],
    ['porosity', '%', 55, 1, 2],
    ['tensile-along', 'MPa', 5, 0.4, 2],
    ['leachable-chloride', 'mg/kg', 20, 6, 1]
  ]
}

/** Numbers from 0 to 1 that look like chance, the same in every run. */
function chance(): () => number {
  let state = 1
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647
}

/** Invented lots with figures as varied as real ones: nothing about them can be written short. */
function inventedLots(count: number): LotPage[] {
  const next = chance()
  const [pattern] = lotPage.document.results
  return Array.from({ length: count }, (_, index) => {
    const product = index % 2 === 0 ? 'flake' : 'foil'
    const day = new Date(Date.UTC(2031, 11, 31) - Math.floor(index / 5) * 86_400_000)
    const made = day.toISOString().slice(0, 10)
    const number = String(count - index).padStart(5, '0')
    const lot = `${product === 'flake' ? 'EB' : 'FL'}-${made.slice(2, 4)}-${number}`
    const results = measured[product].map(([key, unit, middle, spread, places]): ResultRow => ({
      ...pattern!,
      key,
      title: key,
      unit: { printed: unit, ucum: unit },
      value: { exact: '', printed: (middle + spread * (next() - 0.5) * 4).toFixed(places) },
      expandedUncertainty: {
        exact: '',
        printed: ((10 + 89 * next()) / 10 ** (places + 1)).toFixed(places)
      }
    }))
    return lotOf(lot, made, `${product}-${100 + 50 * Math.floor(next() * 3)}`, results)
  })
}

function lotOf(lot: string, made: string, grade: string, results: readonly ResultRow[]): LotPage {
  const document = {
    ...lotPage.document,
    lot,
    made,
    results,
    url: `lots/${lot}/`,
    grade: { ...lotPage.document.grade!, id: grade },
    chain: []
  }
  const key = results.slice(0, 2).map(({ key, title, value, unit }) => ({
    key,
    label: title,
    text: `${value!.printed} ${unit.printed}`
  }))
  const certificate = lotPage.certificates[0]!
  return {
    ...lotPage,
    document,
    summary: { ...lotPage.summary, lot, made, grade, url: document.url, key },
    certificates: [
      { ...certificate, document: { ...certificate.document, number: `CT-${lot.slice(3)}` } }
    ]
  }
}

/** The pages of all lots, without those of each. */
async function writeArchive(lots: readonly LotPage[], folder: string): Promise<void> {
  const summaries = lots.map(({ summary }) => summary)
  const site: SiteDocument = { ...siteDocument, summaries, ...lotLists(summaries), lots: [] }
  const eleventy = new Eleventy('templates', folder, {
    quietMode: true,
    configPath: false,
    config: config => config.addPlugin(lotfolio, { documents: () => Promise.resolve(site), steps })
  })
  eleventy.disableLogger()
  await eleventy.write()
  const list = lotListWriter(site)
  list.add(lots)
  for (const { path, text } of list.files()) {
    mkdirSync(dirname(join(folder, path)), { recursive: true })
    writeFileSync(join(folder, path), text)
  }
}

/** A key, from its event to rows laid out, in ms: the median of five, as others use the machine too. */
const KEY = (id: string, text: string) => `(() => {
  const field = document.getElementById('${id}')
  const before = field.value
  const answer = text => {
    field.value = text
    const start = performance.now()
    field.dispatchEvent(new InputEvent('input', { bubbles: true }))
    document.getElementById('found').getBoundingClientRect()
    return performance.now() - start
  }
  const times = []
  for (let round = 0; round < 5; round += 1) {
    times.push(answer(${JSON.stringify(text)}))
    answer(before)
  }
  answer(${JSON.stringify(text)})
  return times.sort((a, b) => a - b)[2]
})()`

/** What is typed: into which field, letter by letter. */
const typing: readonly [string, string][] = [
  ['find-text', 'FL-31-0'],
  ['find-text', 'released foil'],
  ['find-text', 'ct-30-00'],
  ['find-text', '12'],
  ['find-foil-density-from', '0.985'],
  ['find-foil-density-to', '1.01'],
  ['find-expansion-volume-from', '260'],
  ['find-order', 'thickness'],
  ['find-order', 'lot']
]

async function keyTimes(page: Page): Promise<number[]> {
  const times: number[] = []
  for (const [id, text] of typing) {
    const steps = id === 'find-order' ? [text] : [...text].map((_, at) => text.slice(0, at + 1))
    for (const step of steps) times.push(await page.evaluate<number>(KEY(id, step)))
    times.push(await page.evaluate<number>(KEY(id, id === 'find-order' ? 'made down' : '')))
  }
  return times.sort((a, b) => a - b)
}

export async function benchArchive(count: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'lotfolio-bench-'))
  const browser = await launchChromium()
  try {
    await writeArchive(inventedLots(count), folder)
    const page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
    const loaded = new Set<string>()
    const start = `${pathToFileURL(folder).href}/`
    page.on('request', request => loaded.add(request.url().slice(start.length)))
    await page.goto(`${start}lots/index.html`)
    await page.focus('#find-text')
    await page.waitForSelector('#found tbody b')
    await page.waitForLoadState('networkidle')
    const [kB, list_kB] = [sizeOf(folder, loaded), sizeOf(folder, new Set(['archive/lots.js']))]
    await keyTimes(page)
    const plain = await keyTimes(page)
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: 4 })
    const slow = await keyTimes(page)
    return report(count, { kB, list_kB, files: loaded.size, plain, slow })
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true })
  }
}

const sizeOf = (folder: string, files: ReadonlySet<string>): number =>
  [...files]
    .filter(file => !file.startsWith('data:'))
    .reduce((sum, file) => sum + gzipSync(readFileSync(join(folder, file))).length / 1000, 0)

interface Measured {
  readonly kB: number
  readonly list_kB: number
  readonly files: number
  readonly plain: readonly number[]
  readonly slow: readonly number[]
}

function report(count: number, { kB, list_kB, files, plain, slow }: Measured): string {
  const met = (isMet: boolean) => (isMet ? 'met' : 'missed')
  const times = (name: string, sorted: readonly number[]) =>
    `  ${name.padEnd(44)} median ${sorted[sorted.length >> 1]!.toFixed(1)} ms, longest ${sorted.at(-1)!.toFixed(1)} ms`
  return [
    `Finding lots, ${count} lots: ${kB.toFixed(0)} kB compressed in ${files} files (target ≤ ${MOST_kB}: ${met(kB <= MOST_kB)}), list alone ${list_kB.toFixed(0)} kB`,
    `${times('an answer to a key', plain)} (target ≤ ${MOST_ms}: ${met(plain.at(-1)! <= MOST_ms)})`,
    times('the same on a processor slowed four times', slow)
  ].join('\n')
}
