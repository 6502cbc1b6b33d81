/**
 * How the thickness of a sheet lies over it: the plane of least squares through readings at known
 * places, and what it rises by from one side of the sheet to the other.
 *
 *     t(x, y) = t̄ + a · (x − x̄) + b · (y − ȳ)
 *     a = Σ pᵢ · tᵢ,  pᵢ = (Syy · (xᵢ − x̄) − Sxy · (yᵢ − ȳ)) / (Sxx · Syy − Sxy²); b likewise
 *     taper along  T = a · l / 1000, across  T = b · w / 1000, a and b in mm/m
 *
 * x runs along the length and y along the width, from one corner. An error that all readings share is
 * in none of the slopes, since Σ pᵢ = 0. Residuals about the plane are taken as scatter; places are
 * taken as exact.
 *
 * Source: the method of least squares, JCGM 100:2008, H.3, for two variables.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  estimate,
  propagate,
  type Term
} from '../metrology/estimate.ts'
import { meanValue, type Named, named, weightedSum } from '../metrology/readings.ts'

export const taperAlongBasis = {
  formula: 'T = a · l, t = t̄ + a · (x − x̄) + b · (y − ȳ), l length of the sheet',
  source: 'plane of least squares through the readings, as the line of JCGM 100, H.3'
} as const

export const taperAcrossBasis = {
  formula: 'T = b · w, t = t̄ + a · (x − x̄) + b · (y − ȳ), w width of the sheet',
  source: taperAlongBasis.source
} as const

/** A place on a sheet, from one corner: x along its length, y along its width. */
export interface Spot {
  readonly x_mm: number
  readonly y_mm: number
}

export interface Plane {
  /** Rise of the thickness along the length, mm/m. */
  readonly along_mm_per_m: Estimate
  /** Rise along the width, mm/m. */
  readonly across_mm_per_m: Estimate
  /** Standard deviation of the readings about the plane, mm; n − 3 degrees of freedom. */
  readonly residual_mm: number
  /** Readings less the plane at their places, mm. */
  readonly above_mm: readonly number[]
}

/** Fewest readings that leave anything to tell scatter by. */
const LEAST_SPOTS = 4

/** mm of rise per mm, in mm per m. */
const PER_M = 1000

/** Part of Sxx · Syy below which places lie on one line but for rounding. */
const ON_A_LINE = 1e-9

/** Whether readings at these places tell a plane: four or more, not on one line. */
export function spansPlane(spots: readonly Spot[]): boolean {
  const { xx, yy, xy } = momentsOf(spots)
  return spots.length >= LEAST_SPOTS && xx * yy - xy * xy > ON_A_LINE * xx * yy
}

/**
 * The plane of least squares.
 *
 * @param thickness_mm readings, in the order of `spots`
 * @param read what was read, for the budget
 * @throws RangeError unless there are as many spots as readings; DomainError where they span no plane
 */
export function fitPlane(
  spots: readonly Spot[],
  thickness_mm: readonly Estimate[],
  read: string | Named
): Plane {
  if (spots.length !== thickness_mm.length) throw new RangeError('a plane needs a spot a reading')
  if (!spansPlane(spots))
    throw new DomainError('positions', '4 or more, not on one line', spots.length, 'add readings')
  const { xx, yy, xy, away } = momentsOf(spots)
  const area = xx * yy - xy * xy
  const alongWeights = away.map(([dx, dy]) => (PER_M * (yy * dx - xy * dy)) / area)
  const acrossWeights = away.map(([dx, dy]) => (PER_M * (xx * dy - xy * dx)) / area)
  const along = weightedSum(thickness_mm, alongWeights)
  const across = weightedSum(thickness_mm, acrossWeights)
  const mean = meanValue(thickness_mm)
  const above_mm = thickness_mm.map(
    ({ value }, i) =>
      value - mean - (along.value * away[i]![0] + across.value * away[i]![1]) / PER_M
  )
  const df = spots.length - 3
  const residual_mm = Math.sqrt(above_mm.reduce((sum, one) => sum + one * one, 0) / df)
  const scattered = (slope: Estimate, weights: readonly number[]): Estimate =>
    estimate(slope.value, [
      ...slope.terms.values(),
      ...scatter(weights, residual_mm, named(read), df)
    ])
  return {
    along_mm_per_m: scattered(along, alongWeights),
    across_mm_per_m: scattered(across, acrossWeights),
    residual_mm,
    above_mm
  }
}

/** Sums of squares and products of the places about their middle. */
function momentsOf(spots: readonly Spot[]) {
  const middle = (of: (spot: Spot) => number) =>
    spots.reduce((sum, spot) => sum + of(spot), 0) / spots.length
  const [x, y] = [middle(({ x_mm }) => x_mm), middle(({ y_mm }) => y_mm)]
  const away = spots.map(({ x_mm, y_mm }) => [x_mm - x, y_mm - y] as const)
  const sum = (of: (dx: number, dy: number) => number) =>
    away.reduce((total, [dx, dy]) => total + of(dx, dy), 0)
  return {
    away,
    xx: sum(dx => dx * dx),
    yy: sum((_, dy) => dy * dy),
    xy: sum((dx, dy) => dx * dy)
  }
}

/** What the scatter of each reading does to a slope: one cause a reading, shared by both slopes. */
const scatter = (weights: readonly number[], s: number, { name, of }: Named, df: number): Term[] =>
  weights.map((weight, index) => ({
    cause: {
      name: `${name}, reading ${index + 1} about the plane`,
      pool: `${name}, scatter of ${weights.length} readings about the plane`,
      kind: 'A',
      df,
      ...(of ? { line: { is: 'scatter', of, n: weights.length, plane: true } } : {})
    },
    u: weight * s
  }))

export interface TaperInputs {
  /** Slope of the plane along the side, mm/m. */
  slope_mm_per_m: Estimate
  /** Length of that side, mm. */
  side_mm: Estimate
}

/**
 * Rise of the plane from one end of a side to the other.
 *
 * @returns taper, mm; above 0 where the sheet is thicker at the far end
 * @throws DomainError when the side is not above 0
 */
export function taper(inputs: TaperInputs): Computed<keyof TaperInputs> {
  requirePositive(inputs, 'side_mm', 'check the length and the width of the sheet')
  return propagate(x => (x.slope_mm_per_m * x.side_mm) / PER_M, inputs)
}
