/** The documents of the demo workshop, in both editions. */

import type { LotPage, SiteDocument } from '../../src/documents/types.ts'
import { buildDocuments, type SiteOptions } from '../../src/pipeline.ts'
import { formatProblem, type SourceFile } from '../../src/problem.ts'
import { demoFiles } from '../records-on-disk.ts'
import { demoRegister } from './demo-register.ts'

/** The documents of records that have no error, with what was issued on the demo's own. */
export function siteOf(files: readonly SourceFile[], options: SiteOptions): SiteDocument {
  const register = files === demoFiles ? { register: demoRegister } : {}
  const { site, problems } = buildDocuments(files, { ...register, ...options })
  if (!site) throw new Error(problems.map(formatProblem).join('\n\n'))
  return site
}

export const pageOf = (site: SiteDocument, lot: string): LotPage => {
  // Lines of lots stand in the order of their pages, each of which is made when it is read.
  const page = site.lots[site.summaries.findIndex(summary => summary.lot === lot)]
  if (page?.document.lot !== lot) throw new Error(`${lot} has no page`)
  return page
}

/** The demo's pages are asked for again and again: made once, and kept. */
const kept = (site: SiteDocument): SiteDocument => ({ ...site, lots: [...site.lots] })

export const publicSite = kept(siteOf(demoFiles, { edition: 'public' }))
export const workshopSite = kept(siteOf(demoFiles, { edition: 'workshop' }))
