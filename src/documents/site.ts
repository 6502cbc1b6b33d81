/** Every page of a site, in one edition. */

import { compareText } from '../problem.ts'
import type { EvaluatedContent, EvaluatedExpansion } from '../evaluate/types.ts'
import type { JudgedLot } from '../judge/types.ts'
import { wasLetGo } from '../quality/status.ts'
import { versionOn } from '../records/references.ts'
import type { CertificateOrder, Content } from '../records/types.ts'
import { certificateDocument, type PaperOptions, producerText } from './certificate.ts'
import { chainOf, madeFrom, originOf } from './chain.ts'
import { gradeDocument } from './grade.ts'
import { lotDocument, lotUrl, type Sections } from './lot.ts'
import { type LotView, viewGrade, viewLot } from './lot-view.ts'
import { lotDataOf, lotDataText } from './lot-data.ts'
import { processDocument } from './process.ts'
import { runPage } from './run.ts'
import type { LotPage, LotSummary, Paper, SiteDocument } from './types.ts'
import { marks } from './words.ts'

export interface SiteInputs extends PaperOptions {
  readonly evaluated: EvaluatedContent
  readonly lots: readonly JudgedLot[]
  readonly edition: 'public' | 'workshop'
  readonly asOf: string
}

const allSections: Sections = new Set(['results', 'working', 'chain', 'sampling'] as const)

/** Build the site of one edition. The public one is made of LotViews only. */
export function siteDocument(inputs: SiteInputs): SiteDocument {
  const { evaluated, edition, asOf } = inputs
  const { content } = evaluated
  const shown = inputs.lots.filter(lot => edition === 'workshop' || isPublic(lot, asOf))
  const names = new Set(shown.map(lotName))
  const runs = edition === 'workshop' ? furnaceRuns(evaluated, asOf) : []
  for (const run of runs) names.add(run.lot)
  const made = madeFrom(content)
  const chain = (lot: string) => chainOf(made, lot, name => names.has(name))
  const orders = ordersByLot(content, asOf)
  const pages = [
    ...shown.map(lot => {
      const name = lotName(lot)
      const view = viewLot(content, lot, chain(name))
      const openView = { ...view, chain: originOf(made, name) }
      return lotPage(inputs, lot, view, openView, orders.get(name) ?? [])
    }),
    ...runs.map(run => runPage(evaluated, run, chain(run.lot)))
  ].sort(
    (a, b) =>
      compareText(b.document.made, a.document.made) || compareText(a.document.lot, b.document.lot)
  )
  return {
    edition,
    producer: producerText(content.producer.record),
    asOf,
    lots: pages,
    grades: grades(content, pages, inputs),
    drafts:
      edition === 'workshop' ? content.drafts.map(({ lot, missing }) => ({ lot, missing })) : []
  }
}

const lotName = ({ evaluated }: JudgedLot) => evaluated.lot

/** A lot customers may see: let go once, and of a grade that shows its lots at all. */
const isPublic = ({ evaluated, grade }: JudgedLot, asOf: string): boolean =>
  wasLetGo(evaluated.entry.record.status ?? [], asOf) && (grade.public ?? []).length > 0

const furnaceRuns = ({ lots }: EvaluatedContent, asOf: string): EvaluatedExpansion[] =>
  [...lots.values()].filter(
    (lot): lot is EvaluatedExpansion => lot.kind === 'expansion' && lot.entry.record.made <= asOf
  )

/** Certificates issued by day `asOf`, oldest first. */
function ordersByLot({ certificates }: Content, asOf: string): Map<string, CertificateOrder[]> {
  const byLot = new Map<string, CertificateOrder[]>()
  for (const { record } of certificates)
    if (record.issued <= asOf) byLot.set(record.lot, [...(byLot.get(record.lot) ?? []), record])
  return byLot
}

/** Data files hold figures; the working costs as much to word as all the rest of a page. */
const withoutWorking = (sections: Sections): Sections =>
  new Set([...sections].filter(section => section !== 'working'))

function lotPage(
  inputs: SiteInputs,
  lot: JudgedLot,
  view: LotView,
  openView: LotView,
  orders: readonly CertificateOrder[]
): LotPage {
  const { evaluated, edition } = inputs
  const openSections: Sections = new Set(view.grade.public ?? [])
  const sections = edition === 'workshop' ? allSections : openSections
  const certificates =
    edition === 'workshop' || sections.has('results') ? papersOf(inputs, view, orders) : []
  const dataUrl = `${lotUrl(view.lot)}data.json`
  const papers: Paper[] = [
    ...certificates.map(({ document, url }) => ({
      title:
        document.number === undefined
          ? 'Preview of the certificate (PDF)'
          : `Certificate ${document.number}, revision ${document.revision}${document.mark?.startsWith(marks.superseded) ? ', superseded' : ''} (PDF)`,
      url,
      mediaType: 'application/pdf'
    })),
    { title: 'Figures for programs (JSON)', url: dataUrl, mediaType: 'application/json' }
  ]
  const document = lotDocument(view, sections, papers)
  return {
    summary: summaryOf(document, view),
    document,
    ...(edition === 'workshop' ? { process: processDocument(evaluated, lot.evaluated, lot) } : {}),
    certificates,
    dataUrl,
    attachment: lotDataText(
      lotDataOf(
        { document: lotDocument(openView, withoutWorking(openSections), papers), certificates },
        { edition: 'public', producer: producerText(evaluated.content.producer.record) }
      )
    )
  }
}

/** Newest revision first; a lot without a certificate has a preview. */
function papersOf(
  inputs: SiteInputs,
  view: LotView,
  orders: readonly CertificateOrder[]
): LotPage['certificates'] {
  const producer = inputs.evaluated.content.producer.record
  if (orders.length === 0)
    return [
      {
        document: certificateDocument(view, producer, undefined, false, inputs),
        url: `${lotUrl(view.lot)}${view.lot}-preview.pdf`
      }
    ]
  return [...orders].reverse().map(order => ({
    document: certificateDocument(view, producer, order, isSuperseded(orders, order), inputs),
    url: `${lotUrl(view.lot)}${order.number}-r${order.revision}.pdf`
  }))
}

const isSuperseded = (
  orders: readonly CertificateOrder[],
  { number, revision }: CertificateOrder
) => orders.some(other => other.number === number && other.revision > revision)

function summaryOf(document: LotPage['document'], view: LotView): LotSummary {
  return {
    lot: view.lot,
    url: document.url,
    kind: document.kind,
    grade: view.grade.id,
    made: view.made,
    state: view.state,
    answer: document.answer,
    key: document.results
      .filter(({ basis, limit }) => basis === 'measured' && limit)
      .slice(0, 2)
      .map(({ title, value, unit }) => ({
        label: title,
        text: [value?.printed, unit.printed].filter(Boolean).join(' ')
      }))
  }
}

/** Customers see the grades that show something of their lots, and those their lots are of. */
function grades(
  content: Content,
  pages: readonly LotPage[],
  { edition, asOf }: SiteInputs
): SiteDocument['grades'] {
  return [...content.grades.entries()].flatMap(([id, versions]) => {
    const grade = (versionOn(versions, asOf) ?? versions[0])!.record
    const lots = pages.map(({ summary }) => summary).filter(summary => summary.grade === id)
    const open = grade.validFrom <= asOf && (grade.public ?? []).length > 0
    return edition === 'workshop' || open || lots.length > 0
      ? [gradeDocument(content, viewGrade(grade), lots, asOf)]
      : []
  })
}
