/** The page that shows how a grade's figures run from lot to lot. */

import { boundsOf } from '../judge/judge-lot.ts'
import { type WatchedProcess, watchProcess } from '../judge/watch.ts'
import type { Series, WatchedFigure } from '../judge/watched.ts'
import type { Tolerance } from '../quality/capability.ts'
import { usualEwma } from '../quality/individuals.ts'
import type { Bounds } from '../quality/judge.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import { reportingLimitText, resultFigures, unitText, withUnit } from './figure.ts'
import { gradeUrl, lotUrl } from './lot.ts'
import type { GradeView } from './lot-view.ts'
import { limitText } from './result-row.ts'
import { periodText, typicalOf } from './typical.ts'
import { chartsOf } from './watch-chart.ts'
import { findingsOf } from './watch-findings.ts'
import type { TypicalText, WatchDocument, WatchedLot, WatchedQuantity } from './watch-types.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'

export const watchUrl = (grade: string): string => `${gradeUrl(grade)}watch/`

export interface WatchInputs {
  readonly grade: GradeView
  /** Of this grade, as far as the edition may show them. */
  readonly series: readonly Series[]
  readonly edition: 'public' | 'workshop'
  readonly hasPage: (lot: string) => boolean
  /** English where nothing is said, and in the workshop's edition. */
  readonly tongue?: Tongue
}

/** Of the workshop's page. */
const workshopPopulation =
  'Every lot that was made to this grade and tested, whatever became of it: rejected lots and those regraded since are among them. Limits and indices are of lots as they were made.'

const shownSeries = ({ series }: WatchInputs) => series.filter(({ figures }) => figures.length > 1)

/** Whether any quantity has two lots to set beside each other. */
export const hasWatchPage = (inputs: WatchInputs): boolean => shownSeries(inputs).length > 0

const workshopReading = [
  'Limits lie three standard deviations from the mean, the standard deviation taken from the distances of neighbours: a slow drift then does not widen them. The trigger of a warning is a figure beyond them, nine in a row on one side, six in a row rising or falling, or the moving average beyond its own limits; other patterns are noted in the lists of figures.',
  `The moving average gives the newest lot a weight of ${usualEwma.weight}; its limits are ${usualEwma.width} of its standard deviations wide, which in a process that stands still brings a false alarm in about 370 lots.`,
  'Outliers are flagged and stay in every figure. Intervals and indices are of figures as measured: they hold what measuring adds.'
]

/** The page of one grade. */
export function watchDocument(inputs: WatchInputs): WatchDocument {
  const { grade, edition, tongue = english } = inputs
  const isWorkshop = edition === 'workshop'
  return {
    grade: { id: grade.id, title: tongue.own(grade.title), url: gradeUrl(grade.id) },
    url: watchUrl(grade.id),
    population: isWorkshop ? workshopPopulation : tongue.series.population,
    reading: isWorkshop ? workshopReading : tongue.series.reading,
    quantities: shownSeries(inputs).map(one => watchedQuantity(one, inputs))
  }
}

/** What is typical of a grade, in the order of its quantities. */
export const typicals = ({ grade, series, edition, tongue }: WatchInputs): TypicalText[] =>
  series
    .filter(({ quantity }) => quantities[quantity].side === 'product')
    .flatMap(one => typicalOf({ ...one, isScreened: isScreened(grade, edition) }, tongue) ?? [])

/** Limits decide which lots are let go, and figures hang together: where there is one, all are cut. */
const isScreened = ({ limits }: GradeView, edition: WatchInputs['edition']) =>
  edition === 'public' && Object.keys(limits).length > 0

function watchedQuantity(series: Series, inputs: WatchInputs): WatchedQuantity {
  const { quantity, figures } = series
  const { grade, edition, hasPage, tongue = english } = inputs
  const { key } = quantities[quantity]
  const { title } = wordsOf(tongue, quantity)
  const unit = unitText(quantity)
  const process = watchProcess(series)
  const isWorkshop = edition === 'workshop'
  const typical = typicalOf({ ...series, isScreened: isScreened(grade, edition) }, tongue)
  return {
    key,
    title,
    unit,
    population: populationText(series, process, tongue),
    signals: isWorkshop ? signalTexts(process) : [],
    charts: chartsOf({
      key,
      title: unit.printed ? `${title}, ${unit.printed}` : title,
      figures: process.figures,
      bounds: boundsIn(grade, quantity),
      tongue,
      ...(isWorkshop ? { process } : {})
    }),
    ...(typical ? { typical } : {}),
    findings: isWorkshop
      ? findingsOf({
          quantity,
          unit: unit.printed,
          process,
          tolerance: toleranceOf(boundsIn(grade, quantity)),
          limit: limitOf(grade, quantity)
        })
      : [],
    lots: figures.map(figure =>
      watchedLot(figure, isWorkshop ? process : undefined, hasPage, tongue)
    )
  }
}

const boundsIn = ({ limits }: GradeView, quantity: QuantityName): Bounds => {
  const limit = limits[quantities[quantity].key]
  return limit ? boundsOf(limit) : {}
}

function limitOf(grade: GradeView, quantity: QuantityName): string {
  const bounds = boundsIn(grade, quantity)
  if (bounds.min === undefined && bounds.max === undefined) return ''
  const { printed } = limitText(bounds, 'lot mean')
  return `${withUnit(printed, unitText(quantity).printed)} of revision ${grade.revision}`
}

const toleranceOf = ({ min, max }: Bounds): Tolerance => ({
  ...(min === undefined ? {} : { min: Number(min) }),
  ...(max === undefined ? {} : { max: Number(max) })
})

/** '11 lots made …; 2 figures reported without readings are left out.' */
function populationText(
  { figures, older }: Series,
  { external, below }: WatchedProcess,
  tongue: Tongue
): string {
  const { series: words } = tongue
  const parts = [
    words.made(figures.length, periodText(figures, tongue)),
    older > 0 ? words.older(older) : '',
    external > 0 ? words.external(external) : '',
    below > 0 ? words.below(below) : ''
  ]
  return `${parts.filter(Boolean).join('; ')}.`
}

const signalTexts = ({ seen }: WatchedProcess): string[] =>
  seen
    .filter(({ warns }) => warns)
    .map(({ says, from, at }) => `${at.lot}: ${says}${span(from, at)}`)

const span = (from: WatchedFigure, at: WatchedFigure) =>
  from === at ? '.' : `, beginning with ${from.lot}.`

function watchedLot(
  figure: WatchedFigure,
  process: WatchedProcess | undefined,
  hasPage: WatchInputs['hasPage'],
  tongue: Tongue
): WatchedLot {
  const { lot, made, value, U, below, isExternal } = figure
  const printed = resultFigures(value, U)
  const seen = (process?.seen ?? []).filter(({ at }) => at === figure).map(({ says }) => says)
  const noted = [...(isExternal ? [tongue.series.withoutReadings] : []), ...seen]
  return {
    lot,
    ...(hasPage(lot) ? { url: lotUrl(lot) } : {}),
    made,
    value: tongue.numbers.number(
      below !== undefined
        ? `< ${reportingLimitText(below)}`
        : [printed.value.printed, ...(U > 0 ? [printed.expandedUncertainty.printed] : [])].join(
            ' ± '
          )
    ),
    ...(noted.length > 0 ? { note: noted.join('; ') } : {})
  }
}
