/** The grades of a site, and what leads to them. */

import type { Series } from '../judge/watched.ts'
import { versionOn } from '../records/references.ts'
import type { Content, Grade } from '../records/types.ts'
import type { TraceGraph } from '../trace/graph.ts'
import { choiceOf } from './choice.ts'
import { gradeDocument } from './grade.ts'
import { english } from './languages/tongue.ts'
import { lotsForSale } from './lots-for-sale.ts'
import { viewGrade } from './lot-view.ts'
import { onDemand } from './on-demand.ts'
import { isPublic, type SiteInputs } from './site-inputs.ts'
import type { LotSummary, SiteDocument } from './types.ts'
import { hasWatchPage, watchDocument, type WatchInputs } from './watch.ts'

/** Customers see the grades that show something of their lots, and those their lots are of. */
export function gradesPart(
  summaries: readonly LotSummary[],
  inputs: SiteInputs,
  open: readonly Series[],
  { hasPage, graph }: { hasPage: (lot: string) => boolean; graph: TraceGraph | undefined }
): Pick<SiteDocument, 'grades' | 'watches' | 'choice'> {
  const { edition, asOf, paper, tongue = english } = inputs
  const { content } = inputs.evaluated
  const series = edition === 'workshop' ? inputs.series : open
  const shown = shownGrades(content, inputs, summaries).map(record => {
    const grade = viewGrade(record, content.producer.record)
    const own = series.filter(one => one.grade === grade.id)
    return { grade, watch: { grade, series: own, edition, hasPage, tongue } }
  })
  const grades = shown.map(({ grade, watch }) =>
    gradeDocument(
      { content, grade, asOf, paper, open, tongue },
      watch,
      summaries.filter(summary => summary.grade === grade.id)
    )
  )
  return {
    grades,
    choice: choiceOf({
      grades,
      tongue,
      kindOf: id => content.grades.get(id)![0]!.record.kind,
      lotsOf: lotsForSale({
        content,
        lots: inputs.lots.filter(lot => isPublic(lot, asOf)),
        asOf,
        graph,
        tongue
      })
    }),
    watches: watchPages(shown.map(({ watch }) => watch))
  }
}

const watchPages = (watches: readonly WatchInputs[]): SiteDocument['watches'] =>
  onDemand(watches.filter(hasWatchPage).map(watch => () => watchDocument(watch)))

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
