/**
 * The lots' pages, some at a time.
 *
 * Eleventy holds every page of a run until the run ends, so one run over all lots would need memory
 * for all of them. Here one Eleventy runs over `lot.njk` again and again, each time with other lots.
 */

import { join } from 'node:path'
import Eleventy, { type UserConfig } from '@11ty/eleventy'
import type { LotPage, SiteDocument } from '../documents/types.ts'

/** The template of a lot's page, in the folder of templates. */
export const lotTemplate = 'lot.njk'

/** Lots in one run: fewer cost time, more cost memory. */
export const LOTS_AT_A_TIME = 20

/** Writes the pages of some lots, and returns the files written. */
export type LotPageWriter = (lots: readonly LotPage[]) => Promise<string[]>

/**
 * A writer of a site's lot pages.
 *
 * @param setUp gives an Eleventy the filters and data that every page may use
 */
export function lotPageWriter(
  templates: string,
  output: string,
  site: SiteDocument,
  setUp: (config: UserConfig, site: SiteDocument) => void
): LotPageWriter {
  const shown = { ...site, lots: [] as readonly LotPage[] }
  const eleventy = new Eleventy(join(templates, lotTemplate), output, {
    quietMode: true,
    configPath: false,
    config: config => setUp(config, shown)
  })
  eleventy.disableLogger()
  return async lots => {
    shown.lots = lots
    const [, pages] = await eleventy.write()
    return pages.flatMap(({ outputPath }) => outputPath || [])
  }
}
