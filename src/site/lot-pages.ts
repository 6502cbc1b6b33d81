/**
 * The lots' pages, some at a time.
 *
 * Eleventy holds every page of a run until the run ends, so one run over all lots would need memory
 * for all of them. Here one Eleventy runs over `lot.njk` again and again, each time with other lots.
 */

import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import type { UserConfig } from '@11ty/eleventy'
import type { LotPage, SiteDocument } from '../documents/types.ts'
import type { PaperCache } from './paper-cache.ts'
import { quietEleventy } from './quiet-eleventy.ts'

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
export async function lotPageWriter(
  templates: string,
  output: string,
  site: SiteDocument,
  setUp: (config: UserConfig, site: SiteDocument) => void
): Promise<LotPageWriter> {
  const shown = { ...site, lots: [] as readonly LotPage[] }
  const eleventy = await quietEleventy(join(templates, lotTemplate), output, config =>
    setUp(config, shown)
  )
  return async lots => {
    if (lots.length === 0) return []
    shown.lots = lots
    const [, pages] = await eleventy.write()
    return pages.flatMap(({ outputPath }) => outputPath || [])
  }
}

/** File of a lot's page in a site. */
const pageFile = (output: string, { document }: LotPage) => join(output, document.url, 'index.html')

/**
 * A writer that takes pages of an earlier build where nothing that goes into them has changed.
 *
 * @param common fingerprint of code, templates, and what the site says on every page
 */
export function cachedPageWriter(
  write: LotPageWriter,
  output: string,
  common: string,
  cache: PaperCache
): LotPageWriter {
  return async lots => {
    const made: { readonly lot: LotPage; readonly inputs: readonly string[] }[] = []
    const kept: string[] = []
    for (const lot of lots) {
      const inputs = [common, JSON.stringify(lot)]
      const page = await cache.find(inputs)
      if (page) kept.push(await writeFileWith(pageFile(output, lot), page))
      else made.push({ lot, inputs })
    }
    const written = await write(made.map(({ lot }) => lot))
    for (const { lot, inputs } of made)
      await cache.keep(inputs, await readFile(pageFile(output, lot)))
    return [...kept, ...written]
  }
}

async function writeFileWith(path: string, bytes: Uint8Array): Promise<string> {
  await mkdir(dirname(path), { recursive: true })
  await writeFile(path, bytes)
  return path
}
