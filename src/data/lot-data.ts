/** A lot's figures for programs: what its data.json says, and its text. */

import { type LotData, lotDataOf, lotDataText } from '../documents/lot-data.ts'
import type { LotPage, SiteDocument } from '../documents/types.ts'

/** What was said of each page, as long as the page is held: the table says it again. */
const said = new WeakMap<SiteDocument, WeakMap<LotPage, LotData>>()

/** A lot's figures as one site has them. */
export function dataOf(page: LotPage, site: SiteDocument): LotData {
  const ofSite = said.get(site) ?? new WeakMap<LotPage, LotData>()
  const data = ofSite.get(page) ?? lotDataOf(page, site)
  said.set(site, ofSite.set(page, data))
  return data
}

/** The text of a lot's data.json. */
export const lotData = (page: LotPage, site: SiteDocument): string =>
  lotDataText(dataOf(page, site))
