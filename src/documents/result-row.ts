/** A judged quantity to the row a reader sees, rounded once. */

import type { Result } from '../evaluate/types.ts'
import type { JudgedRow } from '../judge/types.ts'
import { type Expanded, expand } from '../metrology/coverage.ts'
import { uncertaintyOf } from '../metrology/estimate.ts'
import { exactText, placesFor, roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import { spread, uniformity_percent } from '../physics/thickness.ts'
import { type Bounds, type DecisionRule, judge, wordFor } from '../quality/judge.ts'
import type { Scope } from '../judge/types.ts'
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
import { english, spoken, type Tongue, wordsOf } from './languages/tongue.ts'
import { remarkText } from './remark.ts'
import { comparedText, reportedPart, reportedSentence } from './reported.ts'
import { withMinus, unparted } from './words.ts'

/** A row for a quantity that was measured, or that the grade limits and nobody measured. */
export function resultRow(row: JudgedRow, rule: DecisionRule, tongue = english): ResultRow {
  const { quantity, result, bounds, scope } = row
  const { key } = quantities[quantity]
  const { title, meaning } = wordsOf(tongue, quantity)
  const limit = bounds ? limitText(bounds, scope, tongue) : undefined
  const head = { key, title, meaning, unit: unitText(quantity), ...(limit ? { limit } : {}) }
  if (!result) return { ...head, basis: 'not measured' }
  const whole = wholeFigure(row, rule)
  const deciding = decidingFigure(row, rule)
  const verdict = verdictText(row, rule, deciding ?? whole?.printed, tongue)
  return {
    ...head,
    basis: 'measured',
    ...measuredPart(result, row, whole, tongue),
    ...(verdict ? { verdict } : {}),
    ...(deciding ? { decidedBy: decidingText(deciding, row, tongue) } : {})
  }
}

/** A row for what the grade states as typical: never this lot's own figure. */
export function typicalRow(quantity: QuantityName, decimal: string, tongue = english): ResultRow {
  const { title, meaning } = wordsOf(tongue, quantity)
  return {
    key: quantities[quantity].key,
    title,
    meaning,
    basis: 'typical',
    unit: unitText(quantity),
    value: spoken(tongue, writtenFigure(decimal))
  }
}

export const methodText = (method: Method, deviation?: string, { own } = english): MethodText => ({
  id: method.id,
  edition: String(method.edition),
  title: unparted(own(method.title)),
  conditions: unparted(own(method.conditions)),
  ...(method.reference === undefined ? {} : { reference: own(method.reference) }),
  ...(deviation === undefined ? {} : { deviation: unparted(own(deviation)) })
})

/** '≥ 250', '≤ 0.30' or '0.95 to 1.05', with what it holds for. */
export function limitText({ min, max }: Bounds, of: Scope, tongue = english): LimitText {
  const figure = (decimal: string) => spoken(tongue, writtenFigure(decimal))
  const [least, most] = [min, max].map(one => (one === undefined ? undefined : figure(one)))
  const printed =
    least && most
      ? tongue.results.between(least.printed, most.printed)
      : least
        ? `≥ ${least.printed}`
        : `≤ ${most?.printed ?? ''}`
  return {
    ...(least ? { min: least } : {}),
    ...(most ? { max: most } : {}),
    printed,
    of: tongue.results.scopes[of]
  }
}

function measuredPart(
  result: Result,
  row: JudgedRow,
  whole: WholeFigure | undefined,
  tongue: Tongue
) {
  const { estimate, n, tested, below, report } = result
  if (report) return reportedPart(report, below, tongue)
  const shared = {
    ...(n > 0 ? { n } : {}),
    ...methodPart(result, tongue),
    ...(tested === undefined ? {} : { testedOn: tested })
  }
  const said = (figure: Figure) => spoken(tongue, figure)
  if (below !== undefined) return { ...shared, value: said(belowFigure(below, row)), below: true }
  const { printed, k, df } = whole!
  const text = spreadText(result, tongue)
  return {
    ...shared,
    value: said(printed.value),
    expandedUncertainty: said(printed.expandedUncertainty),
    standardUncertainty: said(significant(uncertaintyOf(estimate), 2)),
    coverageFactor: said(significant(k, 3)),
    degreesOfFreedom: freedomText(df, tongue),
    ...(text === undefined ? {} : { spread: text })
  }
}

const methodPart = ({ method, deviation }: Result, tongue: Tongue) =>
  method ? { method: methodText(method, deviation, tongue) } : {}

/** Ask a language for every text of a measured row that a record brings; no figure is printed. */
export function askRow(result: Result, tongue: Tongue): void {
  const { report, below } = result
  if (report) return void reportedPart(report, below, tongue)
  methodPart(result, tongue)
  if (below === undefined) saidBeside(result, tongue)
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

/** The single figure a verdict is on, as computed. */
interface Deciding extends Printed {
  readonly label: string
  readonly count: number
}

/** The verdict with its reason in figures. */
function verdictText(
  row: JudgedRow,
  rule: DecisionRule,
  deciding: Deciding | Printed | undefined,
  tongue: Tongue
): VerdictText | undefined {
  const { verdict, result, bounds } = row
  if (!verdict || !result || !bounds) return undefined
  return {
    word: verdict.word,
    sentence: verdictSentence(row, rule, deciding, tongue),
    ...(verdict.probability === undefined
      ? {}
      : { probability: spoken(tongue, probabilityFigure(verdict.probability)) })
  }
}

function verdictSentence(
  row: JudgedRow,
  rule: DecisionRule,
  deciding: Deciding | Printed | undefined,
  tongue: Tongue
): string {
  const { quantity, result, bounds, scope, verdict } = row
  const { results: words } = tongue
  const unit = unitText(quantity).printed
  const limit = withUnit(limitText(bounds!, scope, tongue).printed, unit)
  const stands = words.standing(verdict!.word, limit, rule)
  if (result!.report) return reportedSentence(result!, { limit, scope, stands }, tongue)
  if (result!.below !== undefined) {
    const { printed } = spoken(tongue, belowFigure(result!.below, row))
    return words.below(withUnit(printed.slice(2), unit), limit)
  }
  const whose =
    'label' in deciding! ? words.whose(deciding.count, scope, words.place(deciding.label)) : ''
  return `${whose}${words.verdict(sumText(deciding!, unit, tongue), stands)}`
}

/** '0.94 g/cm³ ± 0.02 g/cm³' */
const sumText = (figures: ReturnType<typeof resultFigures>, unit: string, tongue: Tongue) => {
  const said = (figure: Figure) => withUnit(spoken(tongue, figure).printed, unit)
  return `${said(figures.value)} ± ${said(figures.expandedUncertainty)}`
}

/** The single figure a verdict is on, printed to as many digits as that verdict takes. */
function decidingFigure(row: JudgedRow, rule: DecisionRule): Deciding | undefined {
  const { worst, ...own } = row
  if (!worst) return undefined
  const { value, expandedUncertainty: U, label, count } = worst
  return { label, count, ...printedFigures(value, U, own, rule) }
}

function decidingText(
  { label, count, value, expandedUncertainty }: Deciding,
  { quantity }: JudgedRow,
  tongue: Tongue
): DecidingFigure {
  const place = tongue.results.place(label)
  const sum = sumText({ value, expandedUncertainty }, unitText(quantity).printed, tongue)
  return {
    place,
    count,
    value: spoken(tongue, value),
    expandedUncertainty: spoken(tongue, expandedUncertainty),
    printed: `${place}, ${sum}`
  }
}

function freedomText(df: number, { results }: Tongue): Figure {
  const { exact, printed } = freedomFigure(df)
  return { exact, printed: Number.isFinite(df) ? printed : results.unlimited }
}

/** How the figure varies over the lot: the product's own property, no part of the uncertainty. */
function spreadText(result: Result, tongue: Tongue): string | undefined {
  const { remark, compared } = saidBeside(result, tongue)
  const sentences = [
    remark,
    betweenSheets(result, tongue),
    overPositions(result, tongue),
    compared
  ].filter(text => text !== undefined)
  return sentences.length === 0 ? undefined : sentences.join(' ')
}

const saidBeside = ({ remark, compared }: Result, tongue: Tongue) => ({
  remark: remark && remarkText(remark, tongue),
  compared: compared && comparedText(compared, tongue)
})

/** Where every position of every sheet was read: extremes and uniformity of the field. */
function overPositions({ quantity, readings, each }: Result, tongue: Tongue): string | undefined {
  const values = readings.map(({ estimate }) => estimate.value)
  if (quantity !== 'thickness_mm' || values.length <= each.length) return undefined
  const { min, max } = spread(values)
  const unit = unitText(quantity).printed
  const text = (x: number, digits = 4) => spoken(tongue, significant(x, digits)).printed
  return tongue.results.overPositions(
    values.length,
    text(min),
    withUnit(text(max), unit),
    text(uniformity_percent(values), 2)
  )
}

function betweenSheets({ each, quantity, n }: Result, tongue: Tongue): string | undefined {
  if (each.length < 2 || each[0]!.label.startsWith('reading')) return undefined
  const { min, max, standardDeviation } = spread(each.map(({ estimate }) => estimate.value))
  const unit = unitText(quantity).printed
  if (standardDeviation === undefined || standardDeviation === 0) return undefined
  const places = placesFor(standardDeviation, 2)
  const text = (x: number) => tongue.numbers.number(withMinus(roundToPlaces(toDecimal(x), places)))
  return tongue.results.betweenSheets(
    n,
    withUnit(text(standardDeviation), unit),
    text(min),
    withUnit(text(max), unit)
  )
}
