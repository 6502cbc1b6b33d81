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
import { english } from './languages/tongue.ts'
import { notMeasuredOf } from './not-measured.ts'
import { safetyNotes } from './safety-notes.ts'
import { supplyOf } from './supply.ts'
import type { Fact } from './types.ts'
import { typicals } from './watch.ts'
import { planAsked } from './visual.ts'
import { chartsOf } from './watch-chart.ts'
import type { ChartText } from './watch-types.ts'
import { dateText, kindTexts, ruleTexts, withMinus } from './words.ts'
import { siteAddress } from './site-address.ts'

export interface DatasheetInputs extends PaperOptions {
  readonly content: Content
  /** In force on day `asOf`. */
  readonly grade: GradeView
  readonly asOf: string
  /** Of lots that customers may see, of every grade. */
  readonly open: readonly Series[]
}

const statements = [
  'A datasheet promises nothing of a lot: its certificate says what was found on it and whether it meets the limits of its grade.',
  'It is no safety data sheet and no inspection document to EN 10204.',
  'Heating and bench results are no fire-resistance rating.'
]

const populationOf = ({ grade }: DatasheetInputs, own: readonly Series[]): string[] => {
  const figures = own.flatMap(series => series.figures)
  return figures.some(({ made }) => made < grade.validFrom)
    ? [...population, earlier(grade.revision)]
    : [...population]
}

const earlier = (revision: number) =>
  `Among these lots are some made before revision ${revision}; they met the limits of their day.`

const population = [
  'Of lots of this grade that were let go. The limits decided which lots these are, so no interval here takes figures as normal where there is a limit.',
  'At least the part of lots that is given lies from one value to the other, both included, with the confidence that is given. Figures are as measured: the intervals hold what measuring adds.'
]

/** The site's address of a page. */
const addressOf = (site: string | undefined, path: string) =>
  site === undefined ? {} : { address: siteAddress(site, path) }

export function datasheetOf(inputs: DatasheetInputs): Datasheet {
  const { content, grade, asOf, open, paper } = inputs
  const own = open.filter(series => series.grade === grade.id)
  const producer = content.producer.record
  return {
    language: 'en',
    paper,
    producer: producerText(producer),
    id: grade.id,
    title: grade.title,
    revision: String(grade.revision),
    validFrom: dateText(grade.validFrom),
    dated: asOf,
    asOf: dateText(asOf),
    kind: grade.kind === 'flake' ? kindTexts.batch : kindTexts.foil,
    description: grade.description,
    facts: factsOf(grade),
    declared: declaredOn(grade, asOf),
    decisionRule: ruleTexts[grade.decisionRule ?? 'simple'],
    measured: measuredProperties(inputs),
    observed: observedProperties(grade, own),
    population: populationOf(inputs, own),
    typical: statedAsTypical(grade),
    notMeasured: notMeasuredOf(grade, Object.keys(reportedOf(grade)), english),
    charts: chiefCharts(grade, own),
    density: grade.kind === 'foil' ? densityCharts(ofFoil(inputs), grade.id) : [],
    supply: supplyOf(grade),
    ...hazardText(grade.hazards, { day: asOf, languages: true }),
    cautions: grade.cautions ?? [],
    safety: safetyNotes(grade, asOf),
    revisions: historyOf(versionsOf(inputs), asOf),
    statements,
    ...addressOf(producer.site, gradeUrl(grade.id))
  }
}

const factsOf = ({ kind, casNumber, safetyDataSheet, visual }: GradeView): Fact[] =>
  [
    { label: 'Product', text: kind === 'flake' ? kindTexts.batch : kindTexts.foil },
    { label: 'CAS number', text: casNumber ?? '' },
    { label: 'Safety data sheet', text: safetyDataSheet ?? '' },
    {
      label: english.foil.facts.visual,
      text: visual ? `of each lot: ${planAsked(visual, english)}` : ''
    }
  ].filter(({ text }) => text !== '')

/** What each lot is measured for: the limits first, then what is reported without one. */
function measuredProperties({ content, grade, asOf }: DatasheetInputs): MeasuredProperty[] {
  // A figure that has a limit is measured as the limit says.
  return Object.entries({ ...grade.limits, ...reportedOf(grade), ...grade.limits }).flatMap(
    ([key, how]) => {
      const quantity = quantityOf(key)
      if (!quantity || !how || quantities[quantity].side !== 'product') return []
      const method = versionOn(content.methods.get(how.method ?? ''), asOf)?.record
      return [
        {
          key,
          title: quantities[quantity].title,
          ...limitOf(grade, key),
          unit: unitText(quantity),
          ...(method ? { method: methodText(method) } : {})
        }
      ]
    }
  )
}

function limitOf({ limits }: GradeView, key: string): Pick<MeasuredProperty, 'limit'> {
  const limit = Object.entries(limits).find(([name]) => name === key)?.[1]
  return limit ? { limit: limitText(boundsOf(limit), limit.of ?? 'lot mean') } : {}
}

const observedProperties = (grade: GradeView, series: readonly Series[]): TypicalProperty[] =>
  typicals({ grade, series, edition: 'public', hasPage: () => true }).map(typical => ({
    ...typical,
    ...limitOf(grade, typical.key)
  }))

const statedAsTypical = ({ typical = {} }: GradeView): Fact[] =>
  Object.entries(typical).flatMap(([key, reading]) => {
    const quantity = quantityOf(key)
    if (!quantity || !reading) return []
    const text = withUnit(withMinus(reading.decimal), unitText(quantity).printed)
    return [{ label: quantities[quantity].title, text }]
  })

/** Properties whose figures are drawn lot by lot. */
const MOST_CHARTS = 2

/** The first limits of the grade: its chief properties. */
const chiefCharts = (grade: GradeView, own: readonly Series[]): ChartText[] =>
  Object.entries(grade.limits)
    .flatMap(([key, limit]) => {
      const series = own.find(({ quantity }) => quantities[quantity].key === key)
      if (!limit || !series) return []
      const unit = unitText(series.quantity).printed
      const title = [quantities[series.quantity].title, unit].filter(Boolean).join(', ')
      return chartsOf({ key, title, figures: series.figures, bounds: boundsOf(limit) })
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
