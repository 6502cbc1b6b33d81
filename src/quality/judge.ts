/**
 * Whether a figure meets a limit, under a named decision rule.
 *
 * The comparison is done in decimal: 1.20 against a minimum of 1.10 with U = 0.10 passes, which
 * floats deny. Value and U enter as decimals of 12 significant digits, the limit as written.
 *
 * Sources: ILAC-G8:09/2019, 4.2 (decision rules and the four words); JCGM 106:2012, 7 (probability
 * of conformity); ASTM E29-22 section 6 (rounding method).
 */

import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import { Decimal } from 'decimal.js'
import { type Computable, placesOf, roundToPlaces, toDecimal } from '../metrology/rounding.ts'

/** simple: within the limit. rounded: the same, once rounded to the limit's last digit. guarded:
 * within the limit by at least U. */
export type DecisionRule = 'simple' | 'rounded' | 'guarded'

export type VerdictWord =
  'pass' | 'conditional pass' | 'conditional fail' | 'fail' | 'not decidable'

/** Bounds as decimals with the digits they were written with; inclusive. */
export interface Bounds {
  readonly min?: string
  readonly max?: string
}

/** A figure to judge, all in the unit of the bounds. */
export interface Judgeable {
  readonly value: number
  readonly standardUncertainty: number
  readonly expandedUncertainty: number
  /** Set where the figure is only known to lie below this reporting limit. */
  readonly below?: number
}

export interface Verdict {
  readonly word: VerdictWord
  /** Probability that the true value meets the limit; absent below the reporting limit. */
  readonly probability?: number
  /** True where U is so large that no value could pass under the guarded rule. */
  readonly undecidableMethod: boolean
  /** How far inside the limit the figure lies, negative outside; absent below the reporting limit. */
  readonly margin?: number
}

/** Worst last, so that the verdict on many is the last of theirs. */
const severity: readonly VerdictWord[] = [
  'pass',
  'conditional pass',
  'not decidable',
  'conditional fail',
  'fail'
]

/** The worst of several verdict words; 'pass' of none. */
export const worstOf = (words: readonly VerdictWord[]): VerdictWord =>
  severity[Math.max(0, ...words.map(word => severity.indexOf(word)))]!

/** Judge one figure against one limit. */
export function judge(figure: Judgeable, bounds: Bounds, rule: DecisionRule): Verdict {
  if (figure.below !== undefined)
    return { word: judgeBelow(toDecimal(figure.below), bounds), undecidableMethod: false }
  const value = toDecimal(figure.value)
  const U = toDecimal(figure.expandedUncertainty)
  return {
    word: wordFor(value, U, bounds, rule),
    probability: conformityProbability(figure, bounds),
    margin: marginOf(value, bounds).toNumber(),
    undecidableMethod: rule === 'guarded' && isAcceptanceEmpty(U, bounds)
  }
}

/** The word alone: how a value with its expanded uncertainty stands to the bounds. */
export function wordFor(
  value: Computable,
  U: Computable,
  bounds: Bounds,
  rule: DecisionRule
): VerdictWord {
  const decimal = toDecimal(value)
  return rule === 'rounded'
    ? judgeRounded(decimal, bounds)
    : judgeGuarded(decimal, rule === 'guarded' ? toDecimal(U) : new Decimal(0), bounds)
}

/**
 * Probability that the true value lies within the bounds, the figure taken as normal.
 *
 * Source: JCGM 106:2012, 7.3 and 7.4.
 */
export function conformityProbability(
  { value, standardUncertainty }: Judgeable,
  bounds: Bounds
): number {
  if (standardUncertainty === 0) return marginOf(toDecimal(value), bounds).isNegative() ? 0 : 1
  const below = (bound: string) => normalCdf(Number(bound), value, standardUncertainty)
  const upper = bounds.max === undefined ? 1 : below(bounds.max)
  const lower = bounds.min === undefined ? 0 : below(bounds.min)
  return Math.max(0, upper - lower)
}

/** True where no value keeps U from both bounds at once. */
function isAcceptanceEmpty(guard: Decimal, { min, max }: Bounds): boolean {
  return (
    min !== undefined &&
    max !== undefined &&
    guard.times(2).greaterThan(new Decimal(max).minus(min))
  )
}

/** How far inside its bounds a value lies: the smaller distance, negative outside. */
function marginOf(value: Decimal, { min, max }: Bounds): Decimal {
  const margins = [
    ...(min === undefined ? [] : [value.minus(min)]),
    ...(max === undefined ? [] : [new Decimal(max).minus(value)])
  ]
  return margins.length === 0 ? new Decimal(0) : Decimal.min(...margins)
}

function judgeGuarded(value: Decimal, guard: Decimal, bounds: Bounds): VerdictWord {
  const margin = marginOf(value, bounds)
  if (margin.greaterThanOrEqualTo(guard)) return 'pass'
  if (margin.greaterThanOrEqualTo(0)) return 'conditional pass'
  return margin.plus(guard).greaterThanOrEqualTo(0) && !guard.isZero() ? 'conditional fail' : 'fail'
}

/** Each bound is met by the value rounded to that bound's own last digit. */
function judgeRounded(value: Decimal, { min, max }: Bounds): VerdictWord {
  const atPlaceOf = (bound: string) => new Decimal(roundToPlaces(value, placesOf(bound)))
  const meetsMin = min === undefined || atPlaceOf(min).greaterThanOrEqualTo(min)
  const meetsMax = max === undefined || atPlaceOf(max).lessThanOrEqualTo(max)
  return meetsMin && meetsMax ? 'pass' : 'fail'
}

/** All that is known is 'less than': enough for a maximum above it or a minimum beyond reach. */
function judgeBelow(below: Decimal, { min, max }: Bounds): VerdictWord {
  if (min !== undefined) return below.lessThanOrEqualTo(min) ? 'fail' : 'not decidable'
  return max !== undefined && below.lessThanOrEqualTo(max) ? 'pass' : 'not decidable'
}
