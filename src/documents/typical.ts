/**
 * What is typical of a grade: between which values most of its lots lie, judged from those made so
 * far. Every typical figure, on a page or a datasheet, comes from here.
 *
 * Figures are taken as measured, so the interval holds what measuring adds to them.
 */

import { Decimal } from 'decimal.js'
import type { WatchedFigure } from '../judge/watched.ts'
import { placesFor, toDecimal } from '../metrology/rounding.ts'
import { andersonDarling, FEWEST_FOR_NORMALITY } from '../quality/normality.ts'
import { sampleOf } from '../quality/sample.ts'
import {
  distributionFreeInterval,
  toleranceInterval,
  type ToleranceInterval
} from '../quality/tolerance.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import { figure, unitText, withUnit } from './figure.ts'
import type { Figure } from './types.ts'
import type { TypicalText } from './watch-types.ts'
import { english, spoken, type Tongue, wordsOf } from './languages/tongue.ts'

/** Fewer lots say nothing of others: of five, the least and greatest hold a third of all. */
export const FEWEST_FOR_TYPICAL = 5

/** Below this p-value figures are not taken as normal. */
export const LEAST_P = 0.05

/** Whose figures are asked about. */
export interface Population {
  readonly quantity: QuantityName
  readonly figures: readonly WatchedFigure[]
  /** The same limit that the grade sets decided which lots are here: their tails are cut. */
  readonly isScreened: boolean
}

/** The typical interval of a quantity; absent where too few lots, or some below their limit, say nothing. */
export function typicalOf(
  { quantity, figures, isScreened }: Population,
  tongue = english
): TypicalText | undefined {
  const own = figures.filter(({ isExternal }) => !isExternal)
  if (own.length < FEWEST_FOR_TYPICAL || own.some(({ below }) => below !== undefined)) return
  const values = own.map(({ value }) => value)
  const interval = isScreened || !isNormal(values) ? free(values) : toleranceInterval(values)
  const { lower, upper } = printedEnds(interval, values, quantity)
  const ends = { lower: spoken(tongue, lower), upper: spoken(tongue, upper) }
  const { key } = quantities[quantity]
  const { title } = wordsOf(tongue, quantity)
  const unit = unitText(quantity)
  const printed = tongue.results.between(ends.lower.printed, ends.upper.printed)
  const text = {
    key,
    title,
    unit,
    ...ends,
    printed,
    n: values.length,
    period: periodText(own, tongue),
    kind: interval.kind,
    coverage: wholePercent(interval.held),
    confidence: wholePercent(interval.confidence)
  }
  return { ...text, sentence: sentenceOf(text, tongue) }
}

/** Whether enough figures are there to judge, and nothing speaks against a normal shape. */
export function isNormal(values: readonly number[]): boolean {
  if (values.length < FEWEST_FOR_NORMALITY) return false
  const found = andersonDarling(values)
  return found !== undefined && found.p >= LEAST_P
}

const free = (values: readonly number[]) => distributionFreeInterval(values)

/** '20 January 2026 to 3 November 2026'; one day where there is only one. */
export const periodText = (
  figures: readonly { readonly made: string }[],
  { series } = english
): string => series.period(figures[0]?.made ?? '', figures.at(-1)?.made ?? '')

/** Both ends rounded outward, so that what was inside stays inside, and none below zero that cannot be. */
export function printedEnds(
  { lower = 0, upper = 0 }: Pick<ToleranceInterval, 'lower' | 'upper'>,
  values: readonly number[],
  quantity: QuantityName
): { lower: Figure; upper: Figure } {
  const { s } = sampleOf(values)
  const places = placesFor(s === 0 ? values[0]! : s, 2)
  const least = quantities[quantity].band[0] >= 0 ? Math.max(0, lower) : lower
  return {
    lower: figure(least, least === 0 ? '0' : outward(least, places, Decimal.ROUND_FLOOR)),
    upper: figure(upper, outward(upper, places, Decimal.ROUND_CEIL))
  }
}

function outward(value: number, places: number, rounding: Decimal.Rounding): string {
  const scale = new Decimal(10).pow(places)
  const rounded = toDecimal(value).times(scale).toDecimalPlaces(0, rounding)
  return rounded.div(scale).toFixed(Math.max(0, places))
}

/** A part as whole per cent, rounded down: no more is claimed than holds. */
const wholePercent = (part: number): Figure =>
  figure(
    100 * part,
    toDecimal(100 * part)
      .toDecimalPlaces(0, Decimal.ROUND_FLOOR)
      .toFixed()
  )

function sentenceOf(text: Omit<TypicalText, 'sentence'>, { series }: Tongue): string {
  const { coverage, confidence, printed, unit, n, period, kind } = text
  return series.typical({
    coverage: coverage.printed,
    confidence: confidence.printed,
    ends: withUnit(printed, unit.printed),
    n,
    period,
    kind
  })
}
