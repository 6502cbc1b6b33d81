/** Every page of a site, in one edition. */

import { compareText } from '../problem.ts'
import type { EvaluatedContent, EvaluatedExpansion } from '../evaluate/types.ts'
import type { JudgedLot } from '../judge/types.ts'
import type { Series } from '../judge/watched.ts'
import { openGraph, type TraceGraph } from '../trace/graph.ts'
import { boardDocument } from './board.ts'
import { producerText } from './certificate.ts'
import { certificatePages, registerText } from './certificate-page.ts'
import { chainOf, madeFrom, originOf } from './chain.ts'
import { english } from './languages/tongue.ts'
import { viewLot } from './lot-view.ts'
import { lotLists } from './lot-lists.ts'
import { lotPage, papersByLot, summaryOf, tracesOf } from './lot-page.ts'
import { newsOf } from './news.ts'
import { onDemand } from './on-demand.ts'
import { openSeries } from './open-series.ts'
import { panelDocument } from './panel.ts'
import { panelsDocument } from './panels.ts'
import { runPage, runSummary } from './run.ts'
import { gradesPart } from './site-grades.ts'
import { isPublic, lotName, sectionsOf, type SiteInputs } from './site-inputs.ts'
import { standings } from './standing.ts'
import type { LotPage, LotSummary, SiteDocument } from './types.ts'

/** Build the site of one edition, in one language. The public one is made of LotViews only. */
export function siteDocument(inputs: SiteInputs): SiteDocument {
  const { evaluated, edition, asOf, tongue = english } = inputs
  const { content } = evaluated
  const shown = inputs.lots.filter(lot => edition === 'workshop' || isPublic(lot, asOf))
  const names = new Set(shown.map(lotName))
  const runs = edition === 'workshop' ? furnaceRuns(evaluated, asOf) : []
  for (const run of runs) names.add(run.lot)
  const graph = edition === 'workshop' ? openGraph(content, asOf) : undefined
  const open = publicSeries(inputs)
  const makers = pageMakers(inputs, { shown, runs, names, graph, open })
  const summaries = makers.map(({ summary }) => summary)
  return {
    language: tongue.language,
    folder: '',
    others: [],
    edition,
    producer: producerText(content.producer.record),
    asOf,
    summaries,
    ...lotLists(summaries, tongue),
    lots: onDemand(makers.map(({ page }) => page)),
    ...gradesPart(summaries, inputs, open, { hasPage: name => names.has(name), graph }),
    boards: graph ? [boardDocument({ ...inputs, content, graph })] : [],
    ...panelsPart(inputs, name => names.has(name)),
    drafts:
      edition === 'workshop' ? content.drafts.map(({ lot, missing }) => ({ lot, missing })) : [],
    ...registerPart(inputs, names),
    ...newsPart(inputs, names)
  }
}

/** What the pages of lots are made of beside the lots. */
interface Shown {
  readonly shown: readonly JudgedLot[]
  readonly runs: readonly EvaluatedExpansion[]
  /** Lots that have a page. */
  readonly names: ReadonlySet<string>
  readonly graph: TraceGraph | undefined
  readonly open: readonly Series[]
}

function pageMakers(inputs: SiteInputs, { shown, runs, names, graph, open }: Shown): PageMaker[] {
  const { evaluated, edition, series, tongue = english } = inputs
  const { content } = evaluated
  const made = madeFrom(content)
  const chain = (lot: string) => chainOf(made, lot, name => names.has(name), tongue)
  const orders = papersByLot(inputs)
  const placeOf = standings(edition === 'workshop' ? series : open)
  return [
    ...shown.map(lot => ({
      summary: summaryOf(viewLot(content, lot, [], tongue), sectionsOf(lot.grade, edition)),
      page: () => {
        const name = lotName(lot)
        const view = viewLot(content, lot, chain(name), tongue)
        const openView = { ...view, chain: originOf(made, name) }
        const page = lotPage(inputs, lot, view, openView, { ...orders(name), graph })
        return { ...page, ...placeOf(view) }
      }
    })),
    ...runs.map(run => ({
      summary: runSummary(run),
      page: () => runPage(evaluated, { ...run }, chain(run.lot), tracesOf(graph, run.lot))
    }))
  ].sort(newestFirst)
}

/** Panels are the workshop's own affair: recipes and other makers' coatings. */
function panelsPart(
  { evaluated, edition, asOf }: SiteInputs,
  hasPage: (lot: string) => boolean
): Pick<SiteDocument, 'panels' | 'panelPages'> {
  const made = [...evaluated.panels.values()].filter(({ entry }) => entry.record.made <= asOf)
  const shown = edition === 'workshop' ? made : []
  const panels = new Map(shown.map(panel => [panel.number, panel]))
  return {
    panels: shown.length > 0 ? [panelsDocument(shown)] : [],
    panelPages: onDemand(shown.map(panel => () => panelDocument(panel, { panels, hasPage })))
  }
}

/** Certificates issued, and the register they stand in: every one, whatever is shown of its lot. */
function registerPart(
  { register, lots, edition, tongue }: SiteInputs,
  names: ReadonlySet<string>
): Pick<SiteDocument, 'certificates' | 'register'> {
  const open = new Set(lots.filter(showsResults).map(lotName))
  const text = registerText(register, tongue)
  return {
    certificates: certificatePages(
      register,
      {
        hasPage: lot => names.has(lot),
        hasPapers: lot => names.has(lot) && (edition === 'workshop' || open.has(lot))
      },
      tongue
    ),
    ...(text ? { register: text } : {})
  }
}

/** Only the public edition has news: a feed leads to pages that others can open. */
function newsPart(inputs: SiteInputs, names: ReadonlySet<string>): Pick<SiteDocument, 'news'> {
  const { site } = inputs.evaluated.content.producer.record
  const news = inputs.edition === 'public' ? newsOf(inputs, site, lot => names.has(lot)) : undefined
  return news ? { news } : {}
}

const showsResults = ({ grade }: JudgedLot): boolean => sectionsOf(grade, 'public').has('results')

/** A lot's line in lists, and its page when it is wanted. */
interface PageMaker {
  readonly summary: LotSummary
  readonly page: () => LotPage
}

const newestFirst = ({ summary: a }: PageMaker, { summary: b }: PageMaker): number =>
  compareText(b.made, a.made) || compareText(b.lot, a.lot)

const furnaceRuns = ({ lots }: EvaluatedContent, asOf: string): EvaluatedExpansion[] =>
  [...lots.values()].filter(
    (lot): lot is EvaluatedExpansion => lot.kind === 'expansion' && lot.entry.record.made <= asOf
  )

/** The figures of many lots as customers see them, whatever the edition. */
function publicSeries({ series, lots, asOf }: SiteInputs) {
  const open = new Set(lots.filter(lot => isPublic(lot, asOf) && showsResults(lot)).map(lotName))
  return openSeries(series, lot => open.has(lot))
}
