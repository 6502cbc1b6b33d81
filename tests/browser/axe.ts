/** Pages looked at by axe as readers have them: on a desk, in the dark, on a small screen. */

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds wrong; of what it finds right it keeps nothing, as naming each element takes its time. */
const runAxe = (options: string): string => `axe
  .run({ ${options}, resultTypes: ['violations'] })
  .then(({ violations }) =>
    violations.map(({ id, nodes }) => id + ': ' + nodes[0].failureSummary + nodes[0].html))`

const everything = `runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']`
const EVERYTHING = runAxe(everything)

/** The one thing that another scheme changes, and takes as long as all else; no width changes a colour. */
const CONTRAST = runAxe(`runOnly: { type: 'rule', values: ['color-contrast'] }`)
const BUT_CONTRAST = runAxe(`${everything}, rules: { 'color-contrast': { enabled: false } }`)

const DESK_px = 1280
const NARROW_px = 320
/** Between them tables begin to stack, and columns to stand side by side. */
const WIDTHS_px = [NARROW_px, 390, 768, DESK_px]

const TOO_WIDE = `document.documentElement.scrollWidth > innerWidth`

/** How a page is put together: headings, names, roles; nothing that its colours or width change. */
export async function structureFaultsIn(page: Page): Promise<Record<string, readonly unknown[]>> {
  await page.evaluate(source)
  const structure = await page.evaluate<unknown[]>(BUT_CONTRAST)
  return structure.length > 0 ? { structure } : {}
}

/** What is wrong with a page as it stands, by how it is looked at; empty where all is well. */
export async function faultsIn(page: Page): Promise<Record<string, readonly unknown[]>> {
  const at = (width: number) => page.setViewportSize({ width, height: 844 })
  await page.evaluate(source)
  await page.emulateMedia({ colorScheme: 'dark' })
  await at(NARROW_px)
  const narrow = await page.evaluate<unknown[]>(BUT_CONTRAST)
  await at(DESK_px)
  const dark = await page.evaluate<unknown[]>(CONTRAST)
  await page.emulateMedia({ colorScheme: 'light' })
  const light = await page.evaluate<unknown[]>(EVERYTHING)
  const wide: number[] = []
  for (const width of WIDTHS_px) {
    await at(width)
    if (await page.evaluate<boolean>(TOO_WIDE)) wide.push(width)
  }
  await at(DESK_px)
  const found = Object.entries({ narrow, dark, light, wide })
  return Object.fromEntries(found.filter(([, faults]) => faults.length > 0))
}
