/**
 * Chromium as tests use it: Debian's, without a sandbox (tests may run as root), no traffic of its own.
 * Its headless shell is the same engine without windows, and shows a page at half the cost.
 */

import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { type Browser, chromium, type LaunchOptions, type Page } from 'playwright-core'
import { findTool, requireTool } from '../tools.ts'
import type { SamplePage } from './render-pages.ts'

/** Scripts for the page are texts: this program has no types of a document. */
const UNFOLD = `for (const details of document.querySelectorAll('details')) details.open = true`

const PROGRAMS = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium']

/** Whether there is one to start; without one, tests are left out or fail as `requireTool` says. */
export const requireChromium = (): boolean =>
  findTool(PROGRAMS) !== undefined || requireTool('/usr/bin/chromium', 'chromium')

/** Start one of its own; the caller closes it. */
export const launchChromium = (options: LaunchOptions = {}): Promise<Browser> =>
  chromium.launch({
    ...options,
    executablePath: findTool(PROGRAMS)!,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'].concat([
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      // No page stands long enough for what the optimising compilers take to come back.
      '--js-flags=--no-maglev,--no-turbofan'
    ])
  })

let shared: Promise<Browser> | undefined

/** The browser of all files of this process; whoever opens pages in it ends with `leaveChromium`. */
export const sharedChromium = (): Promise<Browser> => (shared ??= launchUntilTheEnd())

async function launchUntilTheEnd(): Promise<Browser> {
  const browser = await launchChromium({ handleSIGTERM: false })
  // The runner ends its processes by this signal, and waits a second for them.
  process.once('SIGTERM', () => void browser.close().finally(() => process.exit()))
  return browser
}

/** Close what this file has opened in the shared browser; the next file starts with none. */
export async function leaveChromium(): Promise<void> {
  const browser = await shared
  await Promise.all(browser?.contexts().map(context => context.close()) ?? [])
}

/** How a reader looks at a page. */
export interface View {
  readonly width: number
  readonly scheme: 'light' | 'dark'
}

/** An empty page to look through; its context is of its own, and ends with it. */
export const openView = (browser: Browser, view: View): Promise<Page> =>
  browser.newPage({
    viewport: { width: view.width, height: 844 },
    colorScheme: view.scheme
  })

/** Show a page from its file, as from a memory stick, with all that unfolds unfolded. */
export async function show(page: Page, sample: SamplePage): Promise<void> {
  await page.goto(pathToFileURL(join(sample.folder, sample.path)).href)
  await page.evaluate(UNFOLD)
}

/** A page opened by itself. */
export async function openPage(browser: Browser, sample: SamplePage, view: View): Promise<Page> {
  const page = await openView(browser, view)
  await show(page, sample)
  return page
}
