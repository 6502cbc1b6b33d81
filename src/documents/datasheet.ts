/**
 * The datasheet of a grade: what its page says as well, worded once.
 *
 * It is for everyone, so it is made from the allow-list in every edition: what it says of lots is of
 * those that customers may see.
 */

import { boundsOf } from '../judge/judge-lot.ts'
import type { Series } from '../judge/watched.ts'
import { quantities, quantityOf } from '../quantities.ts'
import { versionOn } from '../records/references.ts'
import type { Content } from '../records/types.ts'
import { type PaperOptions, producerText } from './certificate.ts'
import { declaredOn } from './declared.ts'
import { densityCharts } from './density-charts.ts'
import { unitText, withUnit } from './figure.ts'
import { historyOf, reportedOf } from './grade-history.ts'
import type { Datasheet, MeasuredProperty, TypicalProperty } from './grade-types.ts'
import { hazardText } from './hazards.ts'
import { gradeUrl } from './lot.ts'
import { type GradeView, viewGrade } from './lot-view.ts'
import { limitText, methodText } from './result-row.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'
import { notMeasuredOf } from './not-measured.ts'
import { safetyNotes } from './safety-notes.ts'
import { supplyOf } from './supply.ts'
import type { Fact } from './types.ts'
import { typicals } from './watch.ts'
import { planAsked } from './visual.ts'
import { chartsOf } from './watch-chart.ts'
import type { ChartText } from './watch-types.ts'
import { withMinus } from './words.ts'
import { siteAddress } from './site-address.ts'

export interface DatasheetInputs extends PaperOptions {
  /** English where nothing is said. */
  readonly tongue?: Tongue
  readonly content: Content
  /** In force on day `asOf`. */
  readonly grade: GradeView
  readonly asOf: string
  /** Of lots that customers may see, of every grade. */
  readonly open: readonly Series[]
}

const populationOf = (
  { grade, tongue = english }: DatasheetInputs,
  own: readonly Series[]
): string[] => {
  const { population, earlier } = tongue.grade
  const figures = own.flatMap(series => series.figures)
  return figures.some(({ made }) => made < grade.validFrom)
    ? [...population, earlier(grade.revision)]
    : [...population]
}

/** The site's address of a page. */
const addressOf = (site: string | undefined, path: string) =>
  site === undefined ? {} : { address: siteAddress(site, path) }

export function datasheetOf(inputs: DatasheetInputs): Datasheet {
  const { content, grade, asOf, open, paper, tongue = english } = inputs
  const { own: said, lot: words } = tongue
  const own = open.filter(series => series.grade === grade.id)
  const producer = content.producer.record
  return {
    language: tongue.language,
    paper,
    producer: producerText(producer),
    id: grade.id,
    title: said(grade.title),
    revision: String(grade.revision),
    validFrom: tongue.numbers.date(grade.validFrom),
    dated: asOf,
    asOf: tongue.numbers.date(asOf),
    kind: kindText(grade, tongue),
    description: said(grade.description),
    facts: factsOf(grade, tongue),
    declared: declaredOn(grade, asOf, tongue),
    decisionRule: words.rules[grade.decisionRule ?? 'simple'],
    measured: measuredProperties(inputs),
    observed: observedProperties(grade, own, tongue),
    population: populationOf(inputs, own),
    typical: statedAsTypical(grade, tongue),
    notMeasured: notMeasuredOf(grade, Object.keys(reportedOf(grade)), tongue),
    charts: chiefCharts(grade, own, tongue),
    density: grade.kind === 'foil' ? densityCharts(ofFoil(inputs), grade.id, tongue) : [],
    supply: supplyOf(grade, tongue),
    ...hazardText(grade.hazards, { day: asOf, languages: true, tongue }),
    cautions: (grade.cautions ?? []).map(said),
    safety: safetyNotes(grade, asOf, tongue),
    revisions: historyOf(versionsOf(inputs), asOf, tongue),
    statements: tongue.grade.statements,
    ...addressOf(producer.site, gradeUrl(grade.id))
  }
}

const kindText = ({ kind }: GradeView, { lot }: Tongue): string =>
  lot.kinds[kind === 'flake' ? 'batch' : 'foil']

const factsOf = (grade: GradeView, tongue: Tongue): Fact[] =>
  [
    { label: tongue.lot.facts.product, text: kindText(grade, tongue) },
    { label: tongue.lot.facts.cas, text: grade.casNumber ?? '' },
    { label: tongue.lot.facts.sheet, text: grade.safetyDataSheet ?? '' },
    {
      label: tongue.foil.facts.visual,
      text: grade.visual ? tongue.grade.ofEachLot(planAsked(grade.visual, tongue)) : ''
    }
  ].filter(({ text }) => text !== '')

/** What each lot is measured for: the limits first, then what is reported without one. */
function measuredProperties({
  content,
  grade,
  asOf,
  tongue = english
}: DatasheetInputs): MeasuredProperty[] {
  // A figure that has a limit is measured as the limit says.
  return Object.entries({ ...grade.limits, ...reportedOf(grade), ...grade.limits }).flatMap(
    ([key, how]) => {
      const quantity = quantityOf(key)
      if (!quantity || !how || quantities[quantity].side !== 'product') return []
      const method = versionOn(content.methods.get(how.method ?? ''), asOf)?.record
      return [
        {
          key,
          title: wordsOf(tongue, quantity).title,
          ...limitOf(grade, key, tongue),
          unit: unitText(quantity),
          ...(method ? { method: methodText(method, undefined, tongue) } : {})
        }
      ]
    }
  )
}

function limitOf(
  { limits }: GradeView,
  key: string,
  tongue: Tongue
): Pick<MeasuredProperty, 'limit'> {
  const limit = Object.entries(limits).find(([name]) => name === key)?.[1]
  return limit ? { limit: limitText(boundsOf(limit), limit.of ?? 'lot mean', tongue) } : {}
}

const observedProperties = (
  grade: GradeView,
  series: readonly Series[],
  tongue: Tongue
): TypicalProperty[] =>
  typicals({ grade, series, edition: 'public', hasPage: () => true, tongue }).map(typical => ({
    ...typical,
    ...limitOf(grade, typical.key, tongue)
  }))

const statedAsTypical = ({ typical = {} }: GradeView, tongue: Tongue): Fact[] =>
  Object.entries(typical).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    if (!quantity || !reading) return []
    const figure = tongue.numbers.number(withMinus(reading.decimal))
    const text = withUnit(figure, unitText(quantity).printed)
    return [{ label: wordsOf(tongue, quantity).title, text }]
  })

/** Properties whose figures are drawn lot by lot. */
const MOST_CHARTS = 2

/** The first limits of the grade: its chief properties. */
const chiefCharts = (grade: GradeView, own: readonly Series[], tongue: Tongue): ChartText[] =>
  Object.entries(grade.limits)
    .flatMap(([key, limit]) => {
      const series = own.find(({ quantity }) => quantities[quantity].key === key)
      if (!limit || !series) return []
      const unit = unitText(series.quantity).printed
      const title = [wordsOf(tongue, series.quantity).title, unit].filter(Boolean).join(', ')
      return chartsOf({ key, title, figures: series.figures, bounds: boundsOf(limit), tongue })
    })
    .slice(0, MOST_CHARTS)

/** Series of grades of foil. */
const ofFoil = ({ content, open }: DatasheetInputs): Series[] =>
  open.filter(({ grade }) => content.grades.get(grade)?.[0]?.record.kind === 'foil')

/** The revisions up to the one in force, the first one first. */
const versionsOf = ({ content, grade }: DatasheetInputs): GradeView[] =>
  (content.grades.get(grade.id) ?? [])
    .map(({ record }) => record)
    .filter(({ validFrom }) => validFrom <= grade.validFrom)
    .map(record => viewGrade(record, content.producer.record))
