/** The files about all lots: a table written as the lots' pages are, a list to search, feed, sitemap. */

import { appendFile, mkdir, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { feedFile } from '../data/atom-feed.ts'
import type { ListFile } from '../data/lot-list.ts'
import { lotTableFile } from '../data/lot-table.ts'
import type { LotPage, SiteDocument } from '../documents/types.ts'
import type { Steps } from './steps.ts'

/** Adds the lines of some lots to the table. */
export type TableWriter = (lots: readonly LotPage[]) => Promise<void>

/** Begin the table in a site's folder; no lot is held longer than its lines take to write. */
export async function tableWriter(
  site: SiteDocument,
  folder: string,
  { feeds }: Steps
): Promise<TableWriter> {
  const file = join(folder, lotTableFile)
  const linesOf = feeds.lotLines(site)
  await writeFile(file, feeds.lotTableHead())
  return lots => appendFile(file, lots.map(linesOf).join(''))
}

/** Addresses of the files that a site may have about all its lots. */
export const feedPaths = ({ news }: SiteDocument): string[] => [
  lotTableFile,
  ...(news ? [feedFile] : [])
]

/** Writes the list that pages search, and what comparing lots takes. */
export interface ListWriter {
  readonly add: (lots: readonly LotPage[], shown: readonly LotPage[]) => Promise<void>
  /** Write what is of all lots; every file written, relative to the site's folder. */
  readonly finish: () => Promise<string[]>
}

/**
 * Begin the list of a site. In a language beside the first it is the list of words alone: figures are
 * the same in all, and are read from the root's.
 *
 * @param root folder of the whole site
 */
export function listWriter(form: SiteDocument, root: string, { feeds }: Steps): ListWriter {
  const list = feeds.lotListWriter(form)
  const isFirst = form.folder === ''
  const paths: string[] = []
  const write = async ({ path, text }: ListFile) => {
    const whole = form.folder + path
    await mkdir(dirname(join(root, whole)), { recursive: true })
    await writeFile(join(root, whole), text)
    paths.push(whole)
  }
  return {
    async add(lots, shown) {
      const part = list.add(lots, shown)
      if (isFirst) await write(part)
    },
    async finish() {
      for (const file of isFirst ? list.files() : list.files().slice(0, 1)) await write(file)
      return paths
    }
  }
}

/**
 * Write the feed and the sitemap of a public site that has an address.
 *
 * @param pages files of its pages, relative to its folder
 * @returns files written, beside those of `feedPaths`
 */
export async function writeFeeds(
  site: SiteDocument,
  folder: string,
  { feeds }: Steps,
  pages: readonly string[]
): Promise<string[]> {
  const feed = feeds.atomFeed(site)
  if (!site.news || feed === undefined) return []
  await writeFile(join(folder, feedFile), feed)
  const maps = feeds.sitemapFiles(site.news.site, pages)
  for (const { path, text } of maps) await writeFile(join(folder, path), text)
  return maps.map(({ path }) => path)
}
