/** Every page of a site, in one edition. */

import { compareText } from '../problem.ts'
import type { EvaluatedContent, EvaluatedExpansion } from '../evaluate/types.ts'
import type { JudgedLot } from '../judge/types.ts'
import type { Series } from '../judge/watched.ts'
import { wasLetGo } from '../quality/status.ts'
import { openGraph, type TraceGraph } from '../trace/graph.ts'
import { versionOn } from '../records/references.ts'
import { publicSections } from '../records/schemas/grade.ts'
import type { CertificateOrder, Content, Grade } from '../records/types.ts'
import { boardDocument } from './board.ts'
import { budgetsOf } from './budgets.ts'
import { type PaperOptions, producerText } from './certificate.ts'
import { certificatePages, registerText } from './certificate-page.ts'
import { choiceOf } from './choice.ts'
import { lotsForSale } from './lots-for-sale.ts'
import { chainOf, madeFrom, originOf } from './chain.ts'
import { datasheetLink, gradeDocument } from './grade.ts'
import { groupedBy } from './grouped.ts'
import type { Issued, IssuedRegister } from './issued.ts'
import { labelPapers } from './labels.ts'
import { lotDocument, lotUrl, type Sections, shownAnswer } from './lot.ts'
import { type LotView, viewGrade, viewLot } from './lot-view.ts'
import { lotLists } from './lot-lists.ts'
import { lotDataOf, lotDataText } from './lot-data.ts'
import { newsOf } from './news.ts'
import { onDemand } from './on-demand.ts'
import { screeningText } from './open-panels.ts'
import { openSeries } from './open-series.ts'
import { panelDocument } from './panel.ts'
import { panelsDocument } from './panels.ts'
import { tongueFor } from './languages/records.ts'
import { paperLinks, papersOfLot, type ViewIn } from './papers.ts'
import { processDocument } from './process.ts'
import type { Pictures } from './picture-types.ts'
import { pictureTexts } from './pictures.ts'
import { reportMark } from './report-text.ts'
import { resultRow } from './result-row.ts'
import { runPage, runSummary } from './run.ts'
import { standings } from './standing.ts'
import { statementPaper } from './statement.ts'
import { traceTables } from './trace-tables.ts'
import { waits, withoutWorking } from './to-issue.ts'
import type { LotPage, LotSummary, Paper, SiteDocument } from './types.ts'
import { hasWatchPage, watchDocument } from './watch.ts'
import { kindTexts } from './words.ts'

export interface SiteInputs extends PaperOptions {
  readonly evaluated: EvaluatedContent
  readonly lots: readonly JudgedLot[]
  readonly series: readonly Series[]
  readonly edition: 'public' | 'workshop'
  readonly asOf: string
  readonly register: IssuedRegister
  readonly pictures?: Pictures
}

const allSections: Sections = new Set(publicSections)

/** Build the site of one edition. The public one is made of LotViews only. */
export function siteDocument(inputs: SiteInputs): SiteDocument {
  const { evaluated, edition, asOf } = inputs
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
    language: 'en',
    edition,
    producer: producerText(content.producer.record),
    asOf,
    summaries,
    ...lotLists(summaries),
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
  const { evaluated, edition, series } = inputs
  const { content } = evaluated
  const made = madeFrom(content)
  const chain = (lot: string) => chainOf(made, lot, name => names.has(name))
  const orders = papersByLot(inputs)
  const placeOf = standings(edition === 'workshop' ? series : open)
  return [
    ...shown.map(lot => ({
      summary: summaryOf(viewLot(content, lot, []), sectionsOf(lot.grade, edition)),
      page: () => {
        const name = lotName(lot)
        const view = viewLot(content, lot, chain(name))
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

/** A lot's trace, which the workshop edition alone has. */
const tracesOf = (graph: TraceGraph | undefined, lot: string) =>
  graph ? traceTables(graph, lot) : []

/** Certificates issued, and the register they stand in: every one, whatever is shown of its lot. */
function registerPart(
  { register, lots, edition }: SiteInputs,
  names: ReadonlySet<string>
): Pick<SiteDocument, 'certificates' | 'register'> {
  const open = new Set(lots.filter(showsResults).map(lotName))
  const text = registerText(register)
  return {
    certificates: certificatePages(register, {
      hasPage: lot => names.has(lot),
      hasPapers: lot => names.has(lot) && (edition === 'workshop' || open.has(lot))
    }),
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

/** What an edition shows of the lots of a grade. */
const sectionsOf = (
  { public: open = [] }: Pick<JudgedLot['grade'], 'public'>,
  edition: SiteInputs['edition']
): Sections => (edition === 'workshop' ? allSections : new Set(open))

/** A lot's line in lists, and its page when it is wanted. */
interface PageMaker {
  readonly summary: LotSummary
  readonly page: () => LotPage
}

const newestFirst = ({ summary: a }: PageMaker, { summary: b }: PageMaker): number =>
  compareText(b.made, a.made) || compareText(b.lot, a.lot)

const lotName = ({ evaluated }: JudgedLot) => evaluated.lot

/** A lot customers may see: let go once, and of a grade that shows its lots at all. */
const isPublic = ({ evaluated, grade }: JudgedLot, asOf: string): boolean =>
  wasLetGo(evaluated.entry.record.status ?? [], asOf) && (grade.public ?? []).length > 0

const furnaceRuns = ({ lots }: EvaluatedContent, asOf: string): EvaluatedExpansion[] =>
  [...lots.values()].filter(
    (lot): lot is EvaluatedExpansion => lot.kind === 'expansion' && lot.entry.record.made <= asOf
  )

/** What the register has of a lot, and what is ordered on it beyond that. */
interface LotPapers {
  readonly issued: readonly Issued[]
  readonly orders: readonly CertificateOrder[]
}

/** Papers issued or ordered by day `asOf`, oldest first, by lot. */
function papersByLot({ evaluated, register, asOf }: SiteInputs): (lot: string) => LotPapers {
  const waiting = evaluated.content.certificates
    .map(({ record }) => record)
    .filter(order => order.issued <= asOf && waits(register, order))
  const done = register.issued.filter(({ revision }) => revision.date <= asOf)
  const orders = groupedBy(waiting, order => order.lot)
  const issued = groupedBy(done, ({ revision }) => revision.lot)
  return lot => ({ issued: issued.get(lot) ?? [], orders: orders.get(lot) ?? [] })
}

function lotPage(
  inputs: SiteInputs,
  lot: JudgedLot,
  view: LotView,
  openView: LotView,
  { graph, ...lotPapers }: LotPapers & { readonly graph: TraceGraph | undefined }
): LotPage {
  const { evaluated, edition } = inputs
  const sections = sectionsOf(view.grade, edition)
  const producer = evaluated.content.producer.record
  const viewIn = inLanguages(evaluated.content, lot, view)
  const certificates =
    edition === 'workshop' || sections.has('results')
      ? papersOfLot(viewIn, { ...inputs, ...lotPapers, producer })
      : []
  const dataUrl = `${lotUrl(view.lot)}data.json`
  const papers = paperLinks(certificates, lotPapers.issued, dataUrl)
  const { labels, links } = graph
    ? labelPapers(evaluated.content, lot, lotPapers.issued)
    : { labels: [], links: [] }
  const process = graph
    ? processDocument(evaluated, { ...lot.evaluated }, lot, tracesOf(graph, view.lot))
    : undefined
  const shown = lotDocument(view, sections, [...papers, ...links])
  const bare = { ...shown, ...screeningPart(inputs, view.lot, sections) }
  const statement = statementPaper(bare, {
    producer: producerText(producer),
    paper: inputs.paper,
    ...(process && { process })
  })
  const document = statement ? { ...bare, papers: [...bare.papers, statement.link] } : bare
  return {
    summary: summaryOf(view, sections),
    document,
    ...(process ? { process } : {}),
    ...(statement ? { statement: statement.paper } : {}),
    certificates,
    ...(labels.length > 0 ? { labels } : {}),
    ...(sections.has('pictures') ? picturesPart(lot, inputs) : {}),
    dataUrl,
    datasheet: datasheetLink(view.grade.id),
    ...(sections.has('working') ? { budgets: budgetsOf(view.rows) } : {}),
    attachment: openData(openView, producer, papers, certificates)
  }
}

/** Panels painted with a lot, where its grade opens them. */
function screeningPart({ evaluated, edition, asOf }: SiteInputs, lot: string, sections: Sections) {
  if (!sections.has('panels')) return {}
  const screening = screeningText({ panels: evaluated.panels, lot, asOf, edition })
  return screening ? { screening } : {}
}

function picturesPart({ evaluated }: JudgedLot, { pictures = new Map() }: SiteInputs) {
  const shown = pictureTexts(evaluated.lot, evaluated.entry.record.pictures ?? [], pictures)
  return shown.length > 0 ? { pictures: shown } : {}
}
/** A lot in any language of its papers. */
const inLanguages =
  (content: Content, lot: JudgedLot, view: LotView): ViewIn =>
  language =>
    language === view.tongue.language
      ? view
      : viewLot(content, lot, view.chain, tongueFor(content, language))

/** What customers may know of a lot's figures, for its certificates to carry. */
function openData(
  view: LotView,
  producer: Content['producer']['record'],
  papers: readonly Paper[],
  certificates: LotPage['certificates']
): string {
  const sections = withoutWorking(sectionsOf(view.grade, 'public'))
  return lotDataText(
    lotDataOf(
      { document: lotDocument(view, sections, papers), certificates },
      { edition: 'public', producer: producerText(producer) }
    )
  )
}

function summaryOf(view: LotView, sections: Sections): LotSummary {
  return {
    lot: view.lot,
    url: lotUrl(view.lot),
    kind: kindTexts[view.kind],
    grade: view.grade.id,
    made: view.made,
    state: view.state,
    answer: shownAnswer(view, sections),
    key: view.rows
      .filter(({ result, bounds }) => sections.has('results') && result && bounds)
      .slice(0, 2)
      .map(row => resultRow(row, view.rule))
      .map(({ key, title, value, expandedUncertainty, unit, report }) => ({
        key,
        label: title,
        text: [
          value?.printed,
          expandedUncertainty && `± ${expandedUncertainty.printed}`,
          unit.printed,
          report && `(${reportMark(report)})`
        ]
          .filter(Boolean)
          .join(' ')
      }))
  }
}

/** Customers see the grades that show something of their lots, and those their lots are of. */
function gradesPart(
  summaries: readonly LotSummary[],
  inputs: SiteInputs,
  open: readonly Series[],
  { hasPage, graph }: { hasPage: (lot: string) => boolean; graph: TraceGraph | undefined }
): Pick<SiteDocument, 'grades' | 'watches' | 'choice'> {
  const { edition, asOf, paper } = inputs
  const { content } = inputs.evaluated
  const series = edition === 'workshop' ? inputs.series : open
  const shown = shownGrades(content, inputs, summaries).map(record => {
    const grade = viewGrade(record, content.producer.record)
    const own = series.filter(one => one.grade === grade.id)
    return { grade, watch: { grade, series: own, edition, hasPage } }
  })
  const grades = shown.map(({ grade, watch }) =>
    gradeDocument(
      { content, grade, asOf, paper, open },
      watch,
      summaries.filter(summary => summary.grade === grade.id)
    )
  )
  return {
    grades,
    choice: choiceOf({
      grades,
      kindOf: id => content.grades.get(id)![0]!.record.kind,
      lotsOf: lotsForSale({
        content,
        lots: inputs.lots.filter(lot => isPublic(lot, asOf)),
        asOf,
        graph
      })
    }),
    watches: onDemand(
      shown
        .filter(({ watch }) => hasWatchPage(watch))
        .map(
          ({ watch }) =>
            () =>
              watchDocument(watch)
        )
    )
  }
}

/** The revision in force of each grade that has a page. */
function shownGrades(
  content: Content,
  { edition, asOf }: SiteInputs,
  summaries: readonly LotSummary[]
): Grade[] {
  const ofLots = new Set(summaries.map(({ grade }) => grade))
  const isOpen = (grade: Grade) => grade.validFrom <= asOf && (grade.public ?? []).length > 0
  return [...content.grades.values()]
    .map(versions => (versionOn(versions, asOf) ?? versions[0]!).record)
    .filter(grade => edition === 'workshop' || isOpen(grade) || ofLots.has(grade.id))
}

/** The figures of many lots as customers see them, whatever the edition. */
function publicSeries({ series, lots, asOf }: SiteInputs) {
  const open = new Set(lots.filter(lot => isPublic(lot, asOf) && showsResults(lot)).map(lotName))
  return openSeries(series, lot => open.has(lot))
}
