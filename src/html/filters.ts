/** The filters templates may use: choosing, ordering and laying out, never computing a figure. */

import { markOf } from '../archive/marks.ts'
import { drawRail } from '../figures/rail.ts'
import type { Basis, ChainLink, LotSummary, ResultRow, SiteDocument } from '../documents/types.ts'
import { catalogues } from '../documents/languages/index.ts'
import { capital } from '../documents/capital.ts'
import { formAddress, rootAddress, sharedAddress } from './head.ts'
import { mathml } from './mathml.ts'
import { relative } from './relative.ts'
import { figureFilters } from './shapes.ts'
import { whole } from './whole.ts'

/** Newest first; lots of one day by number, latest number first. */
const byAge = (a: LotSummary, b: LotSummary): number =>
  compare(b.made, a.made) || compare(b.lot, a.lot)

/** Code unit order, the same in every locale. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** The lots' lines for a list, newest first. */
export const newestFirst = (lots: readonly LotSummary[]): readonly LotSummary[] =>
  [...lots].sort(byAge)

/** Rows that stand under one of the three words. */
export const ofBasis = (rows: readonly ResultRow[], basis: Basis): readonly ResultRow[] =>
  rows.filter(row => row.basis === basis)

/** Rows a reader should look at first: judged, and not a plain pass. */
export const exceptions = (rows: readonly ResultRow[]): readonly ResultRow[] =>
  rows.filter(row => row.verdict && row.verdict.word !== 'pass')

/** Whether any row has a limit to be judged by. */
export const anyLimited = (rows: readonly ResultRow[]): boolean => rows.some(row => row.limit)

/** Whether a list holds an entry of this key. */
export const hasKey = (list: readonly { readonly key: string }[], key: string): boolean =>
  list.some(entry => entry.key === key)

/** A chain with the strokes beside it, line by line. */
export function railOf(chain: readonly ChainLink[]) {
  const links = new Map(chain.map(link => [link.lot, link]))
  const { width, lines } = drawRail(chain.map(({ lot, from }) => ({ id: lot, from: from ?? [] })))
  return { width, lines: lines.map(line => ({ ...line, link: links.get(line.id)! })) }
}

/** Address of the lot that a shape stands for; none for the frame and for lots without a page. */
export const urlOf = (
  { of }: { readonly of?: string },
  lots: readonly { readonly lot: string; readonly url?: string }[]
): string | undefined => (of === undefined ? undefined : lots.find(({ lot }) => lot === of)?.url)

/** A page is named by its folder; a file stands at the site's root, whatever the language. */
const isPage = (address: string): boolean =>
  !/^[a-z]+:/iu.test(address) && /(?:^|\/)(?:[?#].*)?$/u.test(address)

/** What a site registers with its template engine, by the name templates use, in its language and folder. */
export const filtersOf = ({ language, folder }: Pick<SiteDocument, 'language' | 'folder'>) => ({
  newestFirst,
  ofBasis,
  exceptions,
  anyLimited,
  hasKey,
  ...figureFilters(catalogues[language].pages.sign),
  railOf,
  markOf,
  capital,
  mathml,
  whole,
  rootAddress,
  sharedAddress,
  formAddress,
  urlOf,
  relative: (target: string, fromPageUrl: string): string =>
    relative(isPage(target) ? folder + target : target, `/${folder}${fromPageUrl.slice(1)}`),
  /** Where the same page stands in another folder. */
  otherPage: (url: string, other: string): string =>
    relative(`${other}${url.slice(1)}`, `/${folder}${url.slice(1)}`)
})
