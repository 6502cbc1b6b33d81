/** The page of one lot, with everything that is written for it. */

import type { JudgedLot } from '../judge/types.ts'
import type { CertificateOrder, Content } from '../records/types.ts'
import type { TraceGraph } from '../trace/graph.ts'
import { budgetsOf } from './budgets.ts'
import { producerText } from './certificate.ts'
import { datasheetLink } from './grade.ts'
import { groupedBy } from './grouped.ts'
import type { Issued } from './issued.ts'
import { labelPapers } from './labels.ts'
import { tongueFor } from './languages/records.ts'
import { english } from './languages/tongue.ts'
import { lotDataOf, lotDataText } from './lot-data.ts'
import { lotDocument, lotUrl, type Sections, shownAnswer } from './lot.ts'
import { type LotView, viewLot } from './lot-view.ts'
import { screeningText } from './open-panels.ts'
import { paperLinks, papersOfLot, type ViewIn } from './papers.ts'
import { pictureTexts } from './pictures.ts'
import { processDocument } from './process.ts'
import { resultRow } from './result-row.ts'
import { sectionsOf, type SiteInputs } from './site-inputs.ts'
import { statementPaper } from './statement.ts'
import { waits, withoutWorking } from './to-issue.ts'
import { traceTables } from './trace-tables.ts'
import type { LotPage, LotSummary, Paper } from './types.ts'

/** What the register has of a lot, and what is ordered on it beyond that. */
export interface LotPapers {
  readonly issued: readonly Issued[]
  readonly orders: readonly CertificateOrder[]
}

/** Papers issued or ordered by day `asOf`, oldest first, by lot. */
export function papersByLot({ evaluated, register, asOf }: SiteInputs): (lot: string) => LotPapers {
  const waiting = evaluated.content.certificates
    .map(({ record }) => record)
    .filter(order => order.issued <= asOf && waits(register, order))
  const done = register.issued.filter(({ revision }) => revision.date <= asOf)
  const orders = groupedBy(waiting, order => order.lot)
  const issued = groupedBy(done, ({ revision }) => revision.lot)
  return lot => ({ issued: issued.get(lot) ?? [], orders: orders.get(lot) ?? [] })
}

export function lotPage(
  inputs: SiteInputs,
  lot: JudgedLot,
  view: LotView,
  openView: LotView,
  { graph, ...lotPapers }: LotPapers & { readonly graph: TraceGraph | undefined }
): LotPage {
  const { evaluated, edition, tongue = english } = inputs
  const sections = sectionsOf(view.grade, edition)
  const producer = evaluated.content.producer.record
  const viewIn = inLanguages(evaluated.content, lot, view)
  const certificates =
    edition === 'workshop' || sections.has('results')
      ? papersOfLot(viewIn, { ...inputs, ...lotPapers, producer })
      : []
  const dataUrl = `${lotUrl(view.lot)}data.json`
  const papers = paperLinks(certificates, lotPapers.issued, dataUrl, tongue)
  const { labels, links } = graph
    ? labelPapers(evaluated.content, lot, lotPapers.issued)
    : { labels: [], links: [] }
  const process = graph
    ? processDocument(evaluated, { ...lot.evaluated }, lot, tracesOf(graph, view.lot))
    : undefined
  const shown = lotDocument(view, sections, [...papers, ...links])
  const bare = { ...shown, ...screeningPart(inputs, view.lot, sections) }
  const told = { producer: producerText(producer), paper: inputs.paper, tongue }
  const statement = statementPaper(bare, { ...told, ...(process && { process }) })
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
    datasheet: datasheetLink(view.grade.id, tongue),
    ...(sections.has('working') ? { budgets: budgetsOf(view.rows) } : {}),
    ...attachmentPart(openView, producer, papers, certificates)
  }
}

/** Certificates are written once, with the site in English. */
const attachmentPart = (...inputs: Parameters<typeof openData>): Pick<LotPage, 'attachment'> =>
  inputs[0].tongue.language === 'en' ? { attachment: openData(...inputs) } : {}

/** Panels painted with a lot, where its grade opens them. */
function screeningPart(
  { evaluated, edition, asOf, tongue = english }: SiteInputs,
  lot: string,
  sections: Sections
) {
  if (!sections.has('panels')) return {}
  const screening = screeningText({ panels: evaluated.panels, lot, asOf, edition, tongue })
  return screening ? { screening } : {}
}

function picturesPart({ evaluated }: JudgedLot, { pictures = new Map(), tongue }: SiteInputs) {
  const shown = pictureTexts(evaluated.lot, evaluated.entry.record.pictures ?? [], pictures, tongue)
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

/** A lot's line in lists. */
export function summaryOf(view: LotView, sections: Sections): LotSummary {
  const { results: words } = view.tongue.pages
  return {
    lot: view.lot,
    url: lotUrl(view.lot),
    kind: view.tongue.lot.kinds[view.kind],
    grade: view.grade.id,
    made: view.made,
    state: view.state,
    answer: shownAnswer(view, sections),
    key: view.rows
      .filter(({ result, bounds }) => sections.has('results') && result && bounds)
      .slice(0, 2)
      .map(row => resultRow(row, view.rule, view.tongue))
      .map(({ key, title, value, expandedUncertainty, unit, report }) => ({
        key,
        label: title,
        text: [
          value?.printed,
          expandedUncertainty && `± ${expandedUncertainty.printed}`,
          unit.printed,
          report && `(${report.own ? words.earlier : words.external})`
        ]
          .filter(Boolean)
          .join(' ')
      }))
  }
}

/** A lot's trace, which the workshop edition alone has. */
export const tracesOf = (graph: TraceGraph | undefined, lot: string) =>
  graph ? traceTables(graph, lot) : []
