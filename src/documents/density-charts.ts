/** Properties of foil against its density, lot by lot. */

import { drawScatterChart, type ScatterPoint } from '../figures/scatter-chart.ts'
import type { Series, WatchedFigure } from '../judge/watched.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import { resultFigures, unitText } from './figure.ts'
import type { TabledChart } from './grade-types.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'
import { spokenDrawing } from './spoken-drawing.ts'
import { atScatter } from './watch-chart.ts'

const DENSITY: QuantityName = 'foilDensity_g_per_cm3'

/** Properties that density decides on; what is computed from density is not among them. */
const PROPERTIES: readonly QuantityName[] = [
  'tensileAlong_MPa',
  'tensileAcross_MPa',
  'compressibility_percent',
  'recovery_percent',
  'resistivity_uOhmm'
]

/** Fewer lots show no run. */
const FEWEST = 3

interface Pair {
  readonly lot: string
  readonly grade: string
  readonly density: WatchedFigure
  readonly property: WatchedFigure
}

/**
 * The charts of a grade: its own lots and, marked apart, those of other grades of foil.
 *
 * @param series of lots that customers may see, of every grade
 */
export const densityCharts = (
  series: readonly Series[],
  grade: string,
  tongue = english
): TabledChart[] =>
  PROPERTIES.flatMap(quantity => {
    const pairs = pairsOf(series, quantity)
    const isShown = pairs.length >= FEWEST && pairs.some(pair => pair.grade === grade)
    return isShown ? [chartOf(quantity, pairs, grade, tongue)] : []
  })

const ofQuantity = (series: readonly Series[], quantity: QuantityName): WatchedFigure[] =>
  series
    .filter(one => one.quantity === quantity)
    .flatMap(({ figures }) => figures)
    .filter(({ isExternal, below }) => !isExternal && below === undefined)

function pairsOf(series: readonly Series[], quantity: QuantityName): Pair[] {
  const densities = new Map(ofQuantity(series, DENSITY).map(figure => [figure.lot, figure]))
  return ofQuantity(series, quantity).flatMap(property => {
    const density = densities.get(property.lot)
    return density ? [{ lot: property.lot, grade: property.grade, density, property }] : []
  })
}

function chartOf(
  quantity: QuantityName,
  pairs: readonly Pair[],
  grade: string,
  tongue: Tongue
): TabledChart {
  const { series, pages } = tongue
  const [x, y] = [named(DENSITY, tongue), named(quantity, tongue)]
  const { key } = quantities[quantity]
  const title = series.againstDensity(y)
  return {
    id: `${key}-against-density`,
    title,
    summary: summaryOf(pairs, grade, tongue),
    drawing: spokenDrawing(
      drawScatterChart(
        pairs.map(pair => pointOf(pair, grade)),
        { x, y }
      ),
      tongue
    ),
    table: {
      caption: series.lotByLot(title),
      columns: [
        { title: pages.tables.lot, numeric: false },
        { title: pages.tables.grade, numeric: false },
        { title: x, numeric: true },
        { title: y, numeric: true }
      ],
      rows: pairs.map(pair => [
        pair.lot,
        pair.grade,
        figureText(pair.density, tongue),
        figureText(pair.property, tongue)
      ])
    }
  }
}

const pointOf = ({ lot, grade, density, property }: Pair, own: string): ScatterPoint => ({
  name: lot,
  x: density.value,
  halfX: density.U,
  y: property.value,
  halfY: property.U,
  isOwn: grade === own
})

/** 'Foil density, g/cm³'. */
function named(quantity: QuantityName, tongue: Tongue): string {
  const unit = unitText(quantity).printed
  return [wordsOf(tongue, quantity).title, unit].filter(Boolean).join(', ')
}

function figureText({ value, U }: WatchedFigure, { numbers }: Tongue): string {
  const figures = resultFigures(value, U)
  return numbers.number(`${figures.value.printed} ± ${figures.expandedUncertainty.printed}`)
}

function summaryOf(pairs: readonly Pair[], grade: string, tongue: Tongue): string {
  const own = pairs.filter(pair => pair.grade === grade).length
  const others = pairs.length - own
  const [densities, values] = [pairs.map(p => p.density.value), pairs.map(p => p.property.value)]
  const span = (of: readonly number[]) => {
    const text = atScatter(of, tongue)
    return tongue.results.between(text(Math.min(...of)), text(Math.max(...of)))
  }
  return tongue.series.scatter(own, others, span(densities), span(values))
}
