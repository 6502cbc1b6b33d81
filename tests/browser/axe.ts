/** Pages looked at by axe as readers have them: on a desk, in the dark, on a small screen. */

import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { thorough } from '../thorough.ts'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/**
 * What axe finds wrong; of what it finds right it keeps nothing, as naming each element takes its time.
 * It is not to fetch the style sheets, as it would for one rule only, which is not asked for.
 */
const runAxe = (options: string): string => `axe
  .run({ ${options}, resultTypes: ['violations'], preload: { assets: ['media'] } })
  .then(({ violations }) =>
    violations.map(({ id, nodes }) => id + ': ' + nodes[0].failureSummary + nodes[0].html))`

const everything = `runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']`
const EVERYTHING = runAxe(everything)

/** The one thing that another scheme changes, and takes as long as all else; no width changes a colour. */
const CONTRAST = runAxe(`runOnly: { type: 'rule', values: ['color-contrast'] }`)
const BUT_CONTRAST = runAxe(`${everything}, rules: { 'color-contrast': { enabled: false } }`)

/**
 * Have contrast measured on the first and the last text of a kind: the same colours and font on the same
 * grounds, all the way up. A table has a thousand cells and a dozen kinds, and contrast takes axe longer
 * than all else.
 */
const MARK_KINDS = `(() => {
  const looks = ['color', 'backgroundColor', 'backgroundImage', 'fontSize', 'fontWeight']
    .concat(['opacity', 'position', 'textShadow', 'filter', 'mixBlendMode'])
  const [kinds, kindOf, ends] = [new Map(), new Map(), new Map()]
  const isText = element =>
    element.matches('input:enabled, select:enabled, textarea:enabled') ||
    [...element.childNodes].some(({ nodeType, data }) => nodeType === Node.TEXT_NODE && data.trim())
  for (const element of document.querySelectorAll('*')) {
    const style = getComputedStyle(element)
    const key = [kindOf.get(element.parentElement), ...looks.map(look => style[look])].join()
    if (!kinds.has(key)) kinds.set(key, kinds.size)
    kindOf.set(element, kinds.get(key))
    delete element.dataset.axeLooks
    if (!isText(element) || !element.checkVisibility({ visibilityProperty: true })) continue
    const kind = element.localName + kinds.get(key)
    ends.set(kind, [ends.get(kind)?.[0] ?? element, element])
  }
  for (const element of [...ends.values()].flat()) element.dataset.axeLooks = ''
  axe.configure({ rules: [{ id: 'color-contrast', selector: '[data-axe-looks]' }] })
})()`

/**
 * Fold again, of all that is unfolded, what has no element that none before it has, by kinds, classes and
 * roles, one within the other: axe looks at the same working once, not for each quantity.
 *
 * @param folds selector of the `details`
 * @returns how many are folded again
 */
export const foldWhatRepeats = (page: Page, folds: string): Promise<number> =>
  page.evaluate(`(() => {
  const seen = new Set()
  const nameOf = ({ localName, className, role, parentElement }) =>
    [localName, className.baseVal ?? className, role, parentElement.localName, parentElement.className].join()
  const isNew = name => !seen.has(name) && seen.add(name)
  const repeated = [...document.querySelectorAll('${folds}')].filter(
    fold => [...fold.querySelectorAll('*')].map(nameOf).filter(isNew).length === 0
  )
  if (${thorough}) return repeated.length
  for (const fold of repeated) fold.open = false
  return repeated.length
})()`)

const DESK_px = 1280
const NARROW_px = 320
/** Between them tables begin to stack, and columns to stand side by side. */
const BETWEEN_px = [390, 768]

const TOO_WIDE = `document.documentElement.scrollWidth > innerWidth`

const withAxe = (page: Page): Promise<unknown> => page.evaluate(source)

/** How a page is put together: headings, names, roles; nothing that its colours or width change. */
export async function structureFaultsIn(page: Page): Promise<Record<string, readonly unknown[]>> {
  await withAxe(page)
  const structure = await page.evaluate<unknown[]>(BUT_CONTRAST)
  return structure.length > 0 ? { structure } : {}
}

const at = (page: Page, width: number) => page.setViewportSize({ width, height: 844 })

/** Widths at which a page as it stands is wider than its window; it is left at the last, a desk's. */
export async function widthsTooWide(
  page: Page,
  widths = [NARROW_px, ...BETWEEN_px, DESK_px]
): Promise<readonly number[]> {
  const wide: number[] = []
  for (const width of widths) {
    await at(page, width)
    if (await page.evaluate<boolean>(TOO_WIDE)) wide.push(width)
  }
  return wide
}

/** What is wrong with a page as it stands, by how it is looked at; empty where all is well. */
export async function faultsIn(page: Page): Promise<Record<string, readonly unknown[]>> {
  const look = async (scheme: 'dark' | 'light', how: string) => {
    await page.emulateMedia({ colorScheme: scheme })
    if (how !== BUT_CONTRAST && !thorough) await page.evaluate(MARK_KINDS)
    return page.evaluate<unknown[]>(how)
  }
  await withAxe(page)
  const wide = [...(await widthsTooWide(page, [NARROW_px]))]
  const narrow = await look('dark', BUT_CONTRAST)
  wide.push(...(await widthsTooWide(page, [...BETWEEN_px, DESK_px])))
  const dark = await look('dark', CONTRAST)
  const light = await look('light', EVERYTHING)
  const found = Object.entries({ narrow, dark, light, wide })
  return Object.fromEntries(found.filter(([, faults]) => faults.length > 0))
}
