/** Figures of a lot that lie on one curve: its sieve analysis, and its expansion over temperature. */

import { drawScatterChart, type ScatterPoint } from '../figures/scatter-chart.ts'
import type { JudgedRow } from '../judge/types.ts'
import { expand } from '../metrology/coverage.ts'
import type { QuantityName } from '../quantities.ts'
import { english, type Tongue } from './languages/tongue.ts'
import { spokenDrawing } from './spoken-drawing.ts'
import type { ChartText } from './watch-types.ts'

/** Aperture of the sieve in µm: what is not retained on it passes. */
const apertures = {
  retained75_percent: 75,
  retained150_percent: 150,
  retained180_percent: 180,
  retained300_percent: 300,
  retained500_percent: 500
} as const satisfies Partial<Record<QuantityName, number>>

/** Temperature of the furnace in °C. */
const temperatures = {
  expansionAt400_mL_per_g: 400,
  expansionAt600_mL_per_g: 600,
  expansionAt800_mL_per_g: 800
} as const satisfies Partial<Record<QuantityName, number>>

/** Two points are a line, not yet a curve. */
const FEWEST = 3

/**
 * The curves that a lot's shown figures give, each from three figures on; none of figures that only lie
 * below a limit, or are reported without an uncertainty of their own.
 */
export function lotCurves(rows: readonly JudgedRow[], tongue: Tongue = english): ChartText[] {
  const { curves: words } = tongue.series
  const sieve = pointsOf(rows, apertures).map(point => ({ ...point, y: 100 - point.y }))
  const drawn = [
    { id: 'sieve-curve', points: sieve, said: words.sieve },
    { id: 'expansion-curve', points: pointsOf(rows, temperatures), said: words.expansion }
  ]
  return drawn.flatMap(({ id, points, said: { title, x, y, summary } }) => {
    if (points.length < FEWEST) return []
    const [first, last] = [points[0]!.x, points.at(-1)!.x]
    return [
      {
        id,
        title,
        summary: summary(points.length, String(first), String(last)),
        drawing: spokenDrawing(drawScatterChart(points, { x, y }, true), tongue)
      }
    ]
  })
}

/** Figures as points, with their expanded uncertainties, from left to right. */
const pointsOf = (
  rows: readonly JudgedRow[],
  places: Readonly<Partial<Record<QuantityName, number>>>
): ScatterPoint[] =>
  rows
    .flatMap(({ quantity, result }): ScatterPoint[] => {
      const x = places[quantity]
      if (x === undefined || !result || result.below !== undefined || result.report) return []
      const { estimate } = result
      const halfY = expand(estimate).U
      return [{ name: quantity, x, y: estimate.value, halfX: 0, halfY, isOwn: true }]
    })
    .sort((a, b) => a.x - b.x)
