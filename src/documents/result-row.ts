/** A judged quantity to the row a reader sees, rounded once. */

import type { Result } from '../evaluate/types.ts'
import type { JudgedRow } from '../judge/types.ts'
import { type Expanded, expand } from '../metrology/coverage.ts'
import { uncertaintyOf } from '../metrology/estimate.ts'
import { exactText, placesFor, roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import { spread, uniformity_percent } from '../physics/thickness.ts'
import { type Bounds, type DecisionRule, judge, wordFor } from '../quality/judge.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import type { Method } from '../records/types.ts'
import {
  freedomFigure,
  probabilityFigure,
  reportingLimitText,
  resultFigures,
  significant,
  unitText,
  withUnit,
  writtenFigure
} from './figure.ts'
import type {
  DecidingFigure,
  Figure,
  LimitText,
  MethodText,
  ResultRow,
  VerdictText
} from './types.ts'
import { comparedText, reportedPart, reportedSentence } from './reported.ts'
import { counted, withMinus, unparted } from './words.ts'

/** A row for a quantity that was measured, or that the grade limits and nobody measured. */
export function resultRow(row: JudgedRow, rule: DecisionRule): ResultRow {
  const { quantity, result, bounds, scope } = row
  const { key, title, meaning } = quantities[quantity]
  const limit = bounds ? limitText(bounds, scope) : undefined
  const head = { key, title, meaning, unit: unitText(quantity), ...(limit ? { limit } : {}) }
  if (!result) return { ...head, basis: 'not measured' }
  const whole = wholeFigure(row, rule)
  const decidedBy = decidingFigure(row, rule)
  const verdict = verdictText(row, rule, decidedBy ?? whole?.printed)
  return {
    ...head,
    basis: 'measured',
    ...measuredPart(result, row, whole),
    ...(verdict ? { verdict } : {}),
    ...(decidedBy ? { decidedBy } : {})
  }
}

/** A row for what the grade states as typical: never this lot's own figure. */
export function typicalRow(quantity: QuantityName, decimal: string): ResultRow {
  const { key, title, meaning } = quantities[quantity]
  return {
    key,
    title,
    meaning,
    basis: 'typical',
    unit: unitText(quantity),
    value: writtenFigure(decimal)
  }
}

export const methodText = (method: Method, deviation?: string): MethodText => ({
  id: method.id,
  edition: String(method.edition),
  title: unparted(method.title),
  conditions: unparted(method.conditions),
  ...(method.reference === undefined ? {} : { reference: method.reference }),
  ...(deviation === undefined ? {} : { deviation: unparted(deviation) })
})

/** '≥ 250', '≤ 0.30' or '0.95 to 1.05', with what it holds for. */
export function limitText({ min, max }: Bounds, of: string): LimitText {
  const printed =
    min !== undefined && max !== undefined
      ? `${withMinus(min)} to ${withMinus(max)}`
      : min !== undefined
        ? `≥ ${withMinus(min)}`
        : `≤ ${withMinus(max ?? '')}`
  return {
    ...(min === undefined ? {} : { min: writtenFigure(min) }),
    ...(max === undefined ? {} : { max: writtenFigure(max) }),
    printed,
    of
  }
}

function measuredPart(result: Result, row: JudgedRow, whole: WholeFigure | undefined) {
  const { estimate, n, method, tested, deviation, below, report } = result
  if (report) return reportedPart(report, below)
  const shared = {
    ...(n > 0 ? { n } : {}),
    ...(method ? { method: methodText(method, deviation) } : {}),
    ...(tested === undefined ? {} : { testedOn: tested })
  }
  if (below !== undefined) return { ...shared, value: belowFigure(below, row), below: true }
  const { printed, k, df } = whole!
  const text = spreadText(result)
  return {
    ...shared,
    value: printed.value,
    expandedUncertainty: printed.expandedUncertainty,
    standardUncertainty: significant(uncertaintyOf(estimate), 2),
    coverageFactor: significant(k, 3),
    degreesOfFreedom: freedomFigure(df),
    ...(text === undefined ? {} : { spread: text })
  }
}

/** '< 0.021', to as many digits as its verdict takes. */
function belowFigure(below: number, { bounds, verdict }: JudgedRow): Figure {
  const agrees = (text: string) =>
    !bounds || judge({ ...bare, below: Number(text) }, bounds, 'simple').word === verdict?.word
  const texts = [2, 3, 4, 5, 6].map(digits => reportingLimitText(below, digits))
  return { exact: exactText(below), printed: `< ${texts.find(agrees) ?? exactText(below)}` }
}

const bare = { value: 0, standardUncertainty: 0, expandedUncertainty: 0 }

/** A value and U in print, and how many digits beyond U's second that took. */
interface Printed extends ReturnType<typeof resultFigures> {
  readonly more: number
}

/** What a row says of the lot as a whole. */
interface WholeFigure extends Expanded {
  readonly printed: Printed
}

/** Undefined for a result that was measured elsewhere: it is printed as it was reported. */
function wholeFigure(row: JudgedRow, rule: DecisionRule): WholeFigure | undefined {
  if (!row.result || row.result.report) return undefined
  const { estimate } = row.result
  const expanded = expand(estimate)
  return { ...expanded, printed: printedFigures(estimate.value, expanded.U, row, rule) }
}

/**
 * Digits a measured row is printed with beyond U's second: fewer by one where its grade reports
 * coarser, more where its verdict takes them.
 */
export const placesFrom = (row: JudgedRow, rule: DecisionRule): number =>
  wholeFigure(row, rule)?.printed.more ?? 0

/** Enough to print every digit that was judged. */
const MOST_EXTRA_PLACES = 30

/**
 * A value and U to so many places that a reader who judges the printed figures by the printed rule
 * comes to the verdict that was reached on the unrounded ones.
 */
function printedFigures(value: number, U: number, row: JudgedRow, rule: DecisionRule): Printed {
  const { bounds, verdict, worst, places } = row
  // U keeps one digit at the least, or it would read as none.
  const coarser = places === undefined || U === 0 ? 0 : places - placesFor(U, 2)
  const start = Math.min(0, Math.max(-1, coarser))
  for (let more = start; ; more++) {
    const figures = { ...resultFigures(value, U, more), more }
    if (!bounds || !verdict || worst || more === MOST_EXTRA_PLACES) return figures
    if (wordInPrint(figures, bounds, rule) === verdict.word) return figures
  }
}

const wordInPrint = (
  { value, expandedUncertainty: U }: Printed,
  bounds: Bounds,
  rule: DecisionRule
) => wordFor(Number(value.printed.replace('−', '-')), Number(U.printed), bounds, rule)

/** The verdict with its reason in figures. */
function verdictText(
  row: JudgedRow,
  rule: DecisionRule,
  deciding: DecidingFigure | Printed | undefined
): VerdictText | undefined {
  const { verdict, result, bounds } = row
  if (!verdict || !result || !bounds) return undefined
  return {
    word: verdict.word,
    sentence: verdictSentence(row, rule, deciding),
    ...(verdict.probability === undefined
      ? {}
      : { probability: probabilityFigure(verdict.probability) })
  }
}

function verdictSentence(
  row: JudgedRow,
  rule: DecisionRule,
  deciding: DecidingFigure | Printed | undefined
): string {
  const { quantity, result, bounds, scope, verdict } = row
  const unit = unitText(quantity).printed
  const limit = withUnit(limitText(bounds!, scope).printed, unit)
  if (result!.report)
    return reportedSentence(result!, limit, scope, standing(verdict!.word, limit, rule))
  if (result!.below !== undefined)
    return `The figure lies below ${withUnit(belowFigure(result!.below, row).printed.slice(2), unit)}; the limit is ${limit}.`
  const whose =
    'place' in deciding!
      ? `Of ${counted(deciding.count, noun(scope))}, ${deciding.place} decides: `
      : ''
  return `${whose}${sumText(deciding!, unit)} is ${standing(verdict!.word, limit, rule)}.`
}

/** '0.94 g/cm³ ± 0.02 g/cm³' */
const sumText = (figures: ReturnType<typeof resultFigures>, unit: string) =>
  `${withUnit(figures.value.printed, unit)} ± ${withUnit(figures.expandedUncertainty.printed, unit)}`

/** The single figure a verdict is on, printed to as many digits as that verdict takes. */
function decidingFigure(row: JudgedRow, rule: DecisionRule): DecidingFigure | undefined {
  const { worst, ...own } = row
  if (!worst) return undefined
  const { value, expandedUncertainty: U, label, count } = worst
  const { more: _more, ...figures } = printedFigures(value, U, own, rule)
  const unit = unitText(row.quantity).printed
  return { place: label, count, ...figures, printed: `${label}, ${sumText(figures, unit)}` }
}

/** How a figure stands to its limit, in words. */
function standing(word: VerdictText['word'], limit: string, rule: DecisionRule): string {
  const rounded = rule === 'rounded' ? ', once rounded to its last digit' : ''
  const phrases: Record<VerdictText['word'], string> = {
    pass: `within the limit of ${limit}${rule === 'guarded' ? ' by at least U' : rounded}`,
    'conditional pass': `within the limit of ${limit}, but by less than U`,
    'conditional fail': `outside the limit of ${limit}, but by no more than U`,
    fail: `outside the limit of ${limit}${rule === 'guarded' ? ' by more than U' : rounded}`,
    'not decidable': `not decidable against the limit of ${limit}`
  }
  return phrases[word]
}

const noun = (scope: string) => scope.replace('every ', '')

/** How the figure varies over the lot: the product's own property, no part of the uncertainty. */
function spreadText(result: Result): string | undefined {
  const compared = result.compared ? comparedText(result.compared) : undefined
  const sentences = [result.remark, betweenSheets(result), overPositions(result), compared].filter(
    text => text !== undefined
  )
  return sentences.length === 0 ? undefined : sentences.join(' ')
}

/** Where every position of every sheet was read: extremes and uniformity of the field. */
function overPositions({ quantity, readings, each }: Result): string | undefined {
  const values = readings.map(({ estimate }) => estimate.value)
  if (quantity !== 'thickness_mm' || values.length <= each.length) return undefined
  const { min, max } = spread(values)
  const unit = unitText(quantity).printed
  const text = (x: number) => significant(x, 4).printed
  return `Over ${values.length} positions: from ${text(min)} to ${withUnit(text(max), unit)}, a range of ${significant(uniformity_percent(values), 2).printed} % of the mean.`
}

function betweenSheets({ each, quantity, n }: Result): string | undefined {
  if (each.length < 2 || each[0]!.label.startsWith('reading')) return undefined
  const { min, max, standardDeviation } = spread(each.map(({ estimate }) => estimate.value))
  const unit = unitText(quantity).printed
  if (standardDeviation === undefined || standardDeviation === 0) return undefined
  const places = placesFor(standardDeviation, 2)
  const text = (x: number) => withMinus(roundToPlaces(toDecimal(x), places))
  return `Between ${n} sheets: s = ${withUnit(text(standardDeviation), unit)}, from ${text(min)} to ${withUnit(text(max), unit)}.`
}
