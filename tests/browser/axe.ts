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

/** Without what is measured on the drawn page, for which axe lays a grid over all of it. */
const BUT_GRID = runAxe(`${everything}, rules: {
  'color-contrast': { enabled: false }, 'link-in-text-block': { enabled: false }, 'target-size': { enabled: false }
}`)

/** Kinds of text whose contrast was measured, of one page or several. */
export type Kinds = Set<string>

/**
 * Have contrast measured on the first and the last text of each kind that is new: the same colours and font
 * on the same grounds, all the way up. A table has a thousand cells and a dozen kinds, and contrast takes
 * axe longer than all else.
 *
 * @param seen kinds measured before
 * @returns those that are new
 */
const markKinds = (page: Page, seen: Kinds): Promise<readonly string[]> =>
  page.evaluate(`(() => {
  const looks = ['color', 'backgroundColor', 'backgroundImage', 'fontSize', 'fontWeight']
    .concat(['opacity', 'position', 'textShadow', 'filter', 'mixBlendMode'])
  const [seen, chains, ends] = [new Set(${JSON.stringify([...seen])}), new Map(), new Map()]
  const short = text => {
    let [a, b] = [7, 11]
    for (let at = 0; at < text.length; at++) {
      a = Math.imul(a ^ text.charCodeAt(at), 2654435761)
      b = Math.imul(b ^ text.charCodeAt(at), 1597334677)
    }
    return (a >>> 0).toString(36) + (b >>> 0).toString(36)
  }
  const isText = element =>
    element.matches('input:enabled, select:enabled, textarea:enabled') ||
    [...element.childNodes].some(({ nodeType, data }) => nodeType === Node.TEXT_NODE && data.trim())
  for (const element of document.querySelectorAll('*')) {
    const style = getComputedStyle(element)
    const chain = short([chains.get(element.parentElement), ...looks.map(look => style[look])].join())
    chains.set(element, chain)
    delete element.dataset.axeLooks
    const kind = element.localName + ' ' + chain
    if (seen.has(kind) || !isText(element)) continue
    if (!element.checkVisibility({ visibilityProperty: true })) continue
    ends.set(kind, [ends.get(kind)?.[0] ?? element, element])
  }
  for (const element of [...ends.values()].flat()) element.dataset.axeLooks = ''
  axe.configure({ rules: [{ id: 'color-contrast', selector: '[data-axe-looks]' }] })
  return [...ends.keys()]
})()`)

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

/** What sticks out of a window too narrow for it; tables that stack must not need scrolling. */
const OVERFLOW = `(() => {
  const isWide = document.documentElement.scrollWidth > innerWidth
  const sticksOut = element =>
    element.getBoundingClientRect().right > innerWidth + 0.5 && !element.closest('.scroll')
  const stacks = matchMedia('(max-width: 56rem)').matches ? document.querySelectorAll('.stack') : []
  return [...stacks]
    .filter(table => table.parentElement.scrollWidth > table.parentElement.clientWidth)
    .concat(isWide ? [...document.querySelectorAll('body *')].filter(sticksOut) : [])
    .map(element => element.outerHTML.slice(0, 80))
    .concat(isWide ? 'page' : [])
})()`

/** Have every page that is shown here from now on come with axe, at half of what it takes to bring it each time. */
export const bringAxe = (page: Page): Promise<unknown> => page.addInitScript({ content: source })

const needAxe = async (page: Page): Promise<void> => {
  if (!(await page.evaluate<boolean>(`'axe' in window`))) await page.evaluate(source)
}

/** How a page is put together: headings, names, roles; nothing that its colours, width or layout change. */
export async function structureFaultsIn(page: Page): Promise<Record<string, readonly unknown[]>> {
  await needAxe(page)
  const structure = await page.evaluate<unknown[]>(thorough ? BUT_CONTRAST : BUT_GRID)
  return structure.length > 0 ? { structure } : {}
}

const at = (page: Page, width: number) => page.setViewportSize({ width, height: 844 })

/** What of a page as it stands is wider than its window, by width; it is left at the last, a desk's. */
export async function overflowIn(
  page: Page,
  widths = [NARROW_px, ...BETWEEN_px, DESK_px]
): Promise<readonly string[]> {
  const wide: string[] = []
  for (const width of widths) {
    await at(page, width)
    const found = await page.evaluate<string[]>(OVERFLOW)
    wide.push(...found.map(element => `${width} px: ${element}`))
  }
  return wide
}

/**
 * What is wrong with a page as it stands, by how it is looked at; empty where all is well.
 *
 * @param seen kinds of text found right on pages before, which grows
 */
export async function faultsIn(
  page: Page,
  seen: Kinds = new Set()
): Promise<Record<string, readonly unknown[]>> {
  const look = async (scheme: 'dark' | 'light', whole: string, rest?: string) => {
    await page.emulateMedia({ colorScheme: scheme })
    if (thorough) return page.evaluate<unknown[]>(whole)
    const kinds = await markKinds(page, seen)
    for (const kind of kinds) seen.add(kind)
    const how = kinds.length > 0 ? whole : rest
    return how ? page.evaluate<unknown[]>(how) : []
  }
  await needAxe(page)
  const wide = [...(await overflowIn(page, [NARROW_px]))]
  const narrow = await page.evaluate<unknown[]>(BUT_CONTRAST)
  wide.push(...(await overflowIn(page, [...BETWEEN_px, DESK_px])))
  const dark = await look('dark', CONTRAST)
  const light = await look('light', EVERYTHING, BUT_CONTRAST)
  const found = Object.entries({ narrow, dark, light, wide })
  return Object.fromEntries(found.filter(([, faults]) => faults.length > 0))
}
