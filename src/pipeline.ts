/**
 * The story on one screen: content folder → documents or problems.
 *
 *     SourceFile → Content → EvaluatedContent → JudgedLot → SiteDocument → html · pdf · data
 *
 * Every step is a pure function of what stands left of it. No step reads a clock, a file or a
 * global, so the same files make the same documents anywhere.
 */

import { checkLanguages } from './documents/check-languages.ts'
import { checkPages } from './documents/check-pages.ts'
import { checkSuppliers } from './documents/check-suppliers.ts'
import { checkTexts } from './documents/check-texts.ts'
import { checkCopies } from './documents/copy-drift.ts'
import { driftCheck } from './documents/drift.ts'
import { type IssuedRegister, noRegister } from './documents/issued.ts'
import type { LabelChoice, LabelRules } from './documents/label-types.ts'
import { rulesFor } from './documents/label-wish.ts'
import { labelDocuments, type Labels } from './documents/labels.ts'
import { openPageLacks, type PageLacks } from './documents/page-lacks.ts'
import type { Pictures } from './documents/picture-types.ts'
import { checkPictures } from './documents/pictures.ts'
import { siteInLanguages } from './documents/site-forms.ts'
import { certificateToIssue, nextOrder } from './documents/to-issue.ts'
import type { SiteDocument } from './documents/types.ts'
import { evaluateContent } from './evaluate/evaluate.ts'
import { checkStockCounts } from './evaluate/stock-containers.ts'
import type { EvaluatedContent } from './evaluate/types.ts'
import { checkCertificates, checkSellable } from './judge/certificates.ts'
import { judgedOnDemand, judgeLot } from './judge/judge-lot.ts'
import { checkPlaceholders, checkWritten } from './judge/placeholders.ts'
import { checkRelease } from './judge/release.ts'
import { checkShipments } from './judge/shipments.ts'
import type { JudgedLot } from './judge/types.ts'
import { checkProcesses } from './judge/watch.ts'
import { openWatch, type Series, watchedFigures } from './judge/watched.ts'
import { inFileOrder, isError, type Problem, type SourceFile } from './problem.ts'
import { loadContent } from './records/content.ts'
import { latestDate } from './records/dates.ts'
import type { CertificateOrder, Records } from './records/types.ts'

export interface SiteOptions {
  readonly edition: 'public' | 'workshop'
  /** Day the lots are judged as of, YYYY-MM-DD; the latest date in the content by default. */
  readonly asOf?: string
  /** Paper of the certificates; the producer's own by default. */
  readonly paper?: 'A4' | 'Letter'
  /** What was issued; nothing by default. */
  readonly register?: IssuedRegister
  /** What is known of the pictures there are; unknown by default, and none is shown. */
  readonly pictures?: Pictures
  /** Where the records are one lot's chain alone, nothing can be said of the process: false. */
  readonly watch?: boolean
}

export interface SiteResult {
  /** Absent when any problem is an error. */
  readonly site?: SiteDocument
  /** Warnings, and errors if any, in file order. */
  readonly problems: readonly Problem[]
}

/** What the records come to: every lot judged, or everything that is wrong. */
export interface Judgement {
  readonly evaluated?: EvaluatedContent
  readonly lots: readonly JudgedLot[]
  /** Their figures by grade and quantity, lot by lot. */
  readonly series: readonly Series[]
  readonly asOf: string
  /** What the languages of the pages lack; there where lots are evaluated. */
  readonly lacks?: PageLacks
  readonly problems: readonly Problem[]
}

/** A certificate ready to be issued, or what stands against it. */
export interface ReadyCertificate {
  readonly order?: CertificateOrder
  /** What it says, as canonical JSON. */
  readonly text?: string
  readonly problems: readonly Problem[]
}

/**
 * What the certificate ordered next on a lot would say if it were issued on a day.
 *
 * @param files the lot's own chain of records, the order on it among them
 * @param register as far as it concerns the lot
 */
export function readyCertificate(
  files: readonly SourceFile[],
  lot: string,
  day: string,
  register: IssuedRegister
): ReadyCertificate {
  const { evaluated, lots, problems: found } = judgeContent(files, day)
  const judged = lots.find(one => one.evaluated.lot === lot)
  const entry = evaluated && nextOrder(evaluated.content, lot, register)
  if (!evaluated || !judged || !entry) return { problems: found }
  const problems = [
    ...found,
    ...checkSellable(entry, judged, day),
    ...checkWritten(evaluated.content, entry.record, judged)
  ]
  if (problems.some(isError)) return { problems }
  const order = entry.record
  const text = certificateToIssue(evaluated.content, judged, order, register.issued)
  return { order, text, problems }
}

/**
 * The labels wanted for a lot, or what stands against them.
 *
 * @param files the lot's own chain of records
 * @param register as far as it concerns the lot
 */
export function lotLabels(
  files: readonly SourceFile[],
  lot: string,
  wish: Partial<LabelRules> & LabelChoice,
  { asOf, register = noRegister }: Pick<SiteOptions, 'asOf' | 'register'>
): Labels {
  const { evaluated, lots, problems } = judgeContent(files, asOf, register)
  const judged = lots.find(one => one.evaluated.lot === lot)
  if (!evaluated || !judged || problems.some(isError)) return { labels: [], problems }
  const { labels, problems: found } = labelDocuments(evaluated.content, judged, register.issued, {
    ...wish,
    ...rulesFor(wish, evaluated.content.producer.record.labels)
  })
  return { labels, problems: inFileOrder([...problems, ...found]) }
}

/** Every document of a site, or everything that is wrong with its records. */
export function buildDocuments(files: readonly SourceFile[], options: SiteOptions): SiteResult {
  const { edition, register = noRegister, pictures, watch = true } = options
  const judged = judgeContent(files, options.asOf, register)
  const { evaluated, lots, asOf } = judged
  const problems = watch ? withSignals(judged, register, pictures) : judged.problems
  if (!evaluated || problems.some(isError)) return { problems }
  const paper = options.paper ?? evaluated.content.producer.record.paper ?? 'A4'
  const series = watch ? judged.series : []
  const inputs = {
    evaluated,
    lots,
    series,
    edition,
    asOf,
    paper,
    register,
    ...(pictures && { pictures })
  }
  return { site: siteInLanguages(inputs), problems }
}

/**
 * What is wrong with the records, and what all of them together say of the process, the stock and the
 * copies that were sent.
 */
export const withSignals = (
  { problems, series, evaluated, lots, asOf, lacks }: Judgement,
  register = noRegister,
  pictures?: Pictures
): readonly Problem[] =>
  inFileOrder([
    ...problems,
    ...checkProcesses(series),
    ...(evaluated && lacks
      ? [
          ...checkStockCounts(evaluated.content),
          ...(pictures ? checkPictures(evaluated.content, pictures) : []),
          ...checkCopies(evaluated.content, byNumber(lots), register, asOf),
          ...checkPages(lacks, {
            evaluated,
            lots,
            series,
            edition: 'public',
            asOf,
            paper: 'A4',
            register,
            ...(pictures && { pictures })
          })
        ]
      : [])
  ])

const byNumber = (lots: readonly JudgedLot[]): Map<string, JudgedLot> =>
  new Map(lots.map(lot => [lot.evaluated.lot, lot]))

/**
 * Parse, validate, evaluate and judge every record, and hold what was issued against it; nothing is
 * rendered.
 */
export function judgeContent(
  files: readonly SourceFile[],
  wantedDay?: string,
  register = noRegister
): Judgement {
  const content = loadContent(files)
  const dayOf = (records: Records) => wantedDay ?? latestOf(records, register)
  if (content.ok) {
    const asOf = dayOf(content.value)
    const drift = driftCheck(content.value, register, asOf)
    const lacks = openPageLacks(content.value, asOf)
    const judged = judgeRecords(content.value, asOf, lot => {
      lacks.see(lot)
      return drift.of(lot)
    })
    // In a circle of lots none is judged, and none is gone.
    const gone = judged.evaluated ? drift.gone(judged.lots) : []
    const found = [...judged.problems, ...register.problems, ...gone, ...drift.reworded()]
    return { ...judged, lacks, problems: inFileOrder(found) }
  }
  // What is sound beside what cannot be read is looked through too: all that is wrong in one run.
  const { problems } = judgeRecords(content.sound, dayOf(content.sound))
  return {
    lots: [],
    series: [],
    asOf: '',
    problems: inFileOrder([...content.problems, ...problems])
  }
}

/** The latest date of records and certificates: what was issued is there on the day it was. */
const latestOf = (content: Records, { issued }: IssuedRegister): string =>
  [
    latestDate(content),
    ...issued.flatMap(({ revision }) => [revision.date, revision.withdrawn?.date ?? ''])
  ].reduce((latest, day) => (day > latest ? day : latest))

/** @param see shown each lot while it has its figures; what is to be said of it beside its release */
function judgeRecords<Kind extends Records>(
  content: Kind,
  asOf: string,
  see: (lot: JudgedLot) => Problem[] = () => []
) {
  const lots: JudgedLot[] = []
  const said: Problem[] = []
  const watch = openWatch()
  const { evaluated, problems } = evaluateContent(content, (lot, kept) => {
    if (lot.kind === 'expansion' || kept.kind === 'expansion') return
    if (lot.entry.record.made > asOf) return
    const judged = judgeLot(content, lot, asOf)
    said.push(...checkRelease(content, judged), ...see(judged))
    watch.add(watchedFigures(judged))
    lots.push(judgedOnDemand(judged, kept))
  })
  if (!evaluated) return { lots: [], series: [], asOf, problems }

  const all = byNumber(lots)
  const found = [
    ...problems,
    ...said,
    ...checkPlaceholders(content),
    ...checkCertificates(content, all),
    ...checkLanguages(content, all),
    ...checkShipments(content, all, asOf),
    ...checkSuppliers(content),
    ...checkTexts(content, lots)
  ]
  return { evaluated, lots, series: watch.series(), asOf, problems: found }
}
