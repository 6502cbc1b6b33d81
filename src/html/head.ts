/** What the heads of pages need: where the site begins, and where a page of it stands. */

import { siteAddress } from '../documents/site-address.ts'
import type { SiteDocument } from '../documents/types.ts'

type Site = Pick<SiteDocument, 'edition' | 'producer' | 'folder'>

/**
 * Where a site begins, the same from every depth; undefined where nobody knows.
 *
 * The public edition stands at its producer's address, maybe in a folder of a server. The workshop
 * edition is shown by this program alone, from the root of its own server: never at that address.
 */
export function rootAddress({
  edition,
  producer: { site }
}: Omit<Site, 'folder'>): string | undefined {
  if (edition === 'workshop') return '/'
  return site && siteAddress(site, '')
}

/** The address a page is shared by; undefined for the private edition and without a site. */
export const sharedAddress = (site: Site, pageUrl: string): string | undefined =>
  formAddress(site, pageUrl, site.folder)

/** The same of the page in another folder, which is that of another language. */
export function formAddress(site: Site, pageUrl: string, folder: string): string | undefined {
  const root = site.edition === 'public' ? rootAddress(site) : undefined
  return root && root + encodeURI(folder + pageUrl.replace(/^\//u, ''))
}
