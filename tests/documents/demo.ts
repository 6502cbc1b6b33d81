/** The documents of the demo workshop, in both editions. */

import type { LotPage, SiteDocument } from '../../src/documents/types.ts'
import { buildDocuments, type SiteOptions } from '../../src/pipeline.ts'
import { formatProblem, type SourceFile } from '../../src/problem.ts'
import { demoFiles } from '../records-on-disk.ts'

/** The documents of records that have no error. */
export function siteOf(files: readonly SourceFile[], options: SiteOptions): SiteDocument {
  const { site, problems } = buildDocuments(files, options)
  if (!site) throw new Error(problems.map(formatProblem).join('\n\n'))
  return site
}

export const pageOf = (site: SiteDocument, lot: string): LotPage => {
  const page = site.lots.find(({ document }) => document.lot === lot)
  if (!page) throw new Error(`${lot} has no page`)
  return page
}

export const publicSite = siteOf(demoFiles, { edition: 'public' })
export const workshopSite = siteOf(demoFiles, { edition: 'workshop' })
