/** The pages of a site for search engines (sitemaps.org, protocol 0.9). */

import { xmlText } from './xml.ts'

/** Address of the sitemap. */
export const sitemapFile = 'sitemap.xml'

/** Most addresses the protocol allows in one file. */
const MOST = 50_000

export interface TextFile {
  readonly path: string
  readonly text: string
}

/**
 * The sitemap: one file, or an index and its parts where the pages are too many for one.
 *
 * No `lastmod`: a page may change by what is recorded elsewhere, and a wrong day is worse than none.
 *
 * @param site the producer's address, with a slash at its end
 * @param pages files of pages relative to the site's root, 'lots/EB-1/index.html'
 */
export function sitemapFiles(site: string, pages: readonly string[]): TextFile[] {
  const shown = pages.filter(page => page !== '404.html')
  const urls = shown.map(page => site + addressOf(page)).sort()
  const parts: string[][] = []
  for (let from = 0; from < urls.length; from += MOST) parts.push(urls.slice(from, from + MOST))
  if (parts.length < 2) return [{ path: sitemapFile, text: list('urlset', 'url', urls) }]
  const files = parts.map((part, index) => ({
    path: `sitemap-${index + 1}.xml`,
    text: list('urlset', 'url', part)
  }))
  const index = files.map(({ path }) => site + path)
  return [{ path: sitemapFile, text: list('sitemapindex', 'sitemap', index) }, ...files]
}

const addressOf = (page: string) => encodeURI(page.replace(/(?<=^|\/)index\.html$/u, ''))

const list = (whole: string, item: string, urls: readonly string[]) =>
  [
    '<?xml version="1.0" encoding="utf-8"?>',
    `<${whole} xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">`,
    ...urls.map(url => `<${item}><loc>${xmlText(url)}</loc></${item}>`),
    `</${whole}>\n`
  ].join('\n')
