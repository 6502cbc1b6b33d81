/** The site's own scripts of data, fetched when they are first needed: from a server or from disk. */

import type { KnownLot } from '../archive/compare.ts'
import { type FigureColumn, type Figures, readFigures } from '../archive/figures.ts'
import { type LotList, partOf, readLots, type WrittenLots } from '../archive/lots.ts'

/** Set by the files in archive/. */
declare const lotfolioLots: WrittenLots | undefined
declare const lotfolioFigures: Readonly<Record<string, FigureColumn | undefined>> | undefined
declare const lotfolioKnown: Readonly<Record<string, KnownLot | undefined>> | undefined

const loading = new Map<string, Promise<void>>()

/** Run a script of this site once. */
export function loadScript(address: string): Promise<void> {
  const known = loading.get(address)
  if (known) return known
  const promise = new Promise<void>((resolve, reject) => {
    const script = document.createElement('script')
    script.addEventListener('load', () => resolve())
    script.addEventListener('error', () => {
      loading.delete(address)
      script.remove()
      reject(new Error(`${address} did not load`))
    })
    script.src = address
    document.head.append(script)
  })
  loading.set(address, promise)
  return promise
}

/** The root of the site, where the scripts lie: figures are the same for pages in any language. */
const files =
  document.currentScript instanceof HTMLScriptElement
    ? new URL('..', document.currentScript.src).href
    : '../'

/**
 * The list of all lots, in the language of the page.
 *
 * @param root where pages of the language begin
 */
export async function loadLots(root: string): Promise<LotList> {
  await loadScript(`${root}archive/lots.js`)
  if (typeof lotfolioLots === 'undefined') throw new Error('the list of lots is empty')
  return readLots(lotfolioLots)
}

/** One quantity's figures, by its key. */
export async function loadFigures(key: string): Promise<Figures> {
  await loadScript(`${files}archive/${key}.js`)
  const column = typeof lotfolioFigures === 'undefined' ? undefined : lotfolioFigures[key]
  if (!column) throw new Error(`${key} has no figures`)
  return readFigures(column)
}

/** What comparing takes of some lots, in the order asked for; a number that is none is left out. */
export async function loadKnown(list: LotList, lots: readonly string[]): Promise<KnownLot[]> {
  const rows = lots.map(lot => list.lots.indexOf(lot)).filter(row => row >= 0)
  const parts = new Set(rows.map(row => partOf(list, row)))
  await Promise.all([...parts].map(part => loadScript(`${files}archive/part-${part}.js`)))
  const known = typeof lotfolioKnown === 'undefined' ? {} : lotfolioKnown
  return rows.flatMap(row => known[list.lots[row]!] ?? [])
}
