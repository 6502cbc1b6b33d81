/**
 * The pictures of the README, taken of what the program makes: `npm run pictures`.
 *
 * Needs Chromium and poppler. The demo is built afresh; the walks are taken as printed.
 */

import { execFileSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser } from 'playwright-core'
import { escaped } from '../src/markup.ts'
import { launchChromium, openView } from './browser/chromium.ts'
import { runInProcess } from './in-process.ts'
import { root } from './root.ts'
import { type Call, firstBatch, oldList, type Walked } from './walk.ts'

const place = mkdtempSync(join(tmpdir(), 'lotfolio-pictures-'))
const kept = (name: string) => join(root, 'docs', `${name}.png`)
const scratch = (name: string) => join(place, `${name}.png`)

const call: Call = (args, folder) =>
  runInProcess(args, folder, { PATH: process.env.PATH ?? '', HOME: place, TMPDIR: place })

/** The first page of a PDF. */
function page(pdf: string, to: string, dots: number): string {
  const at = to.replace(/\.png$/u, '')
  execFileSync('pdftoppm', ['-png', '-singlefile', '-r', String(dots), pdf, at])
  return to
}

/** Pictures side by side, on the grey of a table, in the sizes they have. */
async function laid(browser: Browser, from: readonly string[], to: string): Promise<void> {
  const view = await openView(browser, { width: 2400, scheme: 'light' })
  const pictures = from.map(
    file => `<img src="data:image/png;base64,${readFileSync(file, 'base64')}">`
  )
  await view.setContent(
    `<div id="all" style="display: inline-flex; align-items: flex-start; gap: 16px; padding: 16px; background: #e0e0e0">${pictures.join('')}</div>`
  )
  await view.locator('#all').screenshot({ path: to })
  await view.close()
}

async function walks(browser: Browser): Promise<void> {
  await told(await firstBatch(place, call))
  await laid(
    browser,
    [page(join(place, 'private', 'sheets', 'EB-2.pdf'), scratch('sheet'), 80)],
    kept('bench-sheet')
  )
  await laid(
    browser,
    [page(join(place, 'archive', 'C-2-r1.pdf'), scratch('foil'), 80)],
    kept('first-foil')
  )
  const runs = await told(await oldList(place, call))
  await terminal(browser, runs, kept('old-figure'))
  const papers = [
    page(join(place, 'archive', 'C-1-r1.pdf'), scratch('certificate'), 70),
    page(join(place, 'labels', 'TG-25-04-pail-5L-en.pdf'), scratch('label'), 150)
  ]
  await laid(browser, papers, kept('old-papers'))
}

/** Every command of a walk has to have come to its end. */
function told(runs: Walked): Walked {
  for (const { line, run } of runs) if (run.status !== 0) throw new Error(`${line}\n${run.stderr}`)
  return runs
}

/** What a command answered, as a terminal shows it. */
async function terminal(browser: Browser, runs: Walked, to: string): Promise<void> {
  const { line, run } = runs.find(one => one.line.includes('run explain'))!
  const view = await openView(browser, { width: 980, scheme: 'light' })
  const text = `$ ${line}\n\n${run.stdout.split('\n– ')[0]!}`
  await view.setContent(
    `<pre id="t" style="font: 14px/1.4 monospace; padding: 16px; margin: 0">${escaped(text)}</pre>`
  )
  await view.locator('#t').screenshot({ path: to })
  await view.close()
}

/** The page for choosing a grade, with a thickness asked for. */
async function choice(browser: Browser): Promise<void> {
  const view = await openView(browser, { width: 1180, scheme: 'light' })
  await view.goto(pathToFileURL(join(place, '_site', 'choose', 'index.html')).href)
  const inputs = view.locator('input[aria-label^="Thickness,"]')
  await inputs.nth(0).fill('0.47')
  await inputs.nth(1).fill('0.53')
  await inputs.nth(1).blur()
  await view.waitForFunction(`document.querySelector('[data-grade^=foil] .standing b')`)
  await view.locator('section:has([data-grade^=foil])').screenshot({ path: kept('choose-foil') })
  await view.close()
}

/** Labels of a pail, a pouch and a carton, in three languages. */
async function labels(browser: Browser): Promise<void> {
  const out = join(place, 'demo-labels')
  const made = [
    ['EB-26-012', 'de', 'pail'],
    ['EB-26-012', 'en', 'pouch'],
    ['FL-26-003', 'es', 'carton']
  ] as const
  const drawn: string[] = []
  for (const [lot, language, container] of made) {
    const to = join(out, container)
    await demo('label', lot, '--language', language, '--container', container, '--out', to)
    const [file] = readdirSync(to)
    drawn.push(page(join(to, file!), scratch(container), 150))
  }
  await laid(browser, drawn, kept('labels'))
}

async function demo(...args: readonly string[]): Promise<void> {
  const { status, stderr } = await call([...args, '--content', join(root, 'content')], place)
  if (status !== 0) throw new Error(stderr)
}

const browser = await launchChromium()
try {
  await walks(browser)
  await labels(browser)
  await demo('build', '--out', join(place, '_site'))
  await choice(browser)
} finally {
  await browser.close()
  rmSync(place, { recursive: true, force: true })
}
