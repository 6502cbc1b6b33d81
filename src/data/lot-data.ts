/** A lot's data.json as text. */

import { lotDataOf, lotDataText } from '../documents/lot-data.ts'
import type { LotPage, SiteDocument } from '../documents/types.ts'

/** A lot's figures for programs: the text of its data.json. */
export const lotData = (page: LotPage, site: SiteDocument): string =>
  lotDataText(lotDataOf(page, site))
