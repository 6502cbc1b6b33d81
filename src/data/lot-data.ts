import type { LotPage, SiteDocument } from '../documents/types.ts'

/** A lot's figures for programs: the text of its data.json. */
export declare function lotData(page: LotPage, site: SiteDocument): string
