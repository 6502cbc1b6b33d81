/** A result's working: what a reader needs to recompute the figure. */

import { isOpenFormula, isOpenSource } from '../evaluate/bases.ts'
import type { Cell, Result, Trace, WrittenReadings } from '../evaluate/types.ts'
import { expand } from '../metrology/coverage.ts'
import { type BudgetLine, budgetOf, type InputLine } from '../metrology/estimate.ts'
import { roundResult, roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import { quantities, quantityOf } from '../quantities.ts'
import {
  freedomFigure,
  reportingLimitText,
  resultFigures,
  significant,
  unitText,
  withUnit
} from './figure.ts'
import { inputParts } from '../metrology/units.ts'
import { english, type Tongue, wordsOf } from './languages/tongue.ts'
import { fieldText } from './thickness-field.ts'
import { plainFormula, readFormula } from './formula.ts'
import { remarkText } from './remark.ts'
import { comparedText, reportedWorking } from './reported.ts'
import type { Table, Working } from './types.ts'
import { unparted, withMinus } from './words.ts'

/**
 * The working of one figure, in a language. What that has no words for is told to `tongue.lacks`, so that
 * no page mixes two; figures of the process have words in English alone.
 *
 * @param more digits it is printed with beyond U's second, as in its row
 */
export function workingOf(result: Result, more = 0, tongue = english): Working {
  if (result.report) return reportedWorking(result, tongue)
  const { quantity } = result
  const trace = result.trace()
  const { formula, ...said } = basisOf(result, trace, tongue)
  return {
    key: quantities[quantity].key,
    title: wordsOf(tongue, quantity).title,
    formula: plainFormula(formula),
    statements: readFormula(formula),
    ...said,
    outcome: outcomeText(result, more, tongue),
    ...(trace.readings ? { readings: readingsTable(trace.readings, result, tongue) } : {}),
    inputs: inputsTable(trace, tongue),
    budget: budgetTable(result, tongue),
    ...(trace.field ? { field: fieldText(trace.field, tongue) } : {})
  }
}

/** Ask a language for every text of a working whose words it may lack; no figure is printed. */
export function askWorking(result: Result, tongue: Tongue): void {
  if (result.report) return void reportedWorking(result, tongue)
  const trace = result.trace()
  basisOf(result, trace, tongue)
  for (const { input } of trace.inputs) inputTitle(input, tongue)
  for (const line of budgetOf(result.estimate)) lineName(line, tongue)
}

/** What a working rests on, and what is said beside it. */
function basisOf({ compared, method, remark }: Result, trace: Trace, tongue: Tongue) {
  const { working: words, own } = tongue
  return {
    formula: isOpenFormula(trace.formula)
      ? words.formula(trace.formula)
      : unworded(trace.formula, tongue),
    source: isOpenSource(trace.source)
      ? words.source(trace.source)
      : unworded(trace.source, tongue),
    ...(method
      ? { method: words.method(method.id, String(method.edition), unparted(own(method.title))) }
      : {}),
    notes: [
      ...(remark === undefined ? [] : [remarkText(remark, tongue)]),
      ...trace.notes.map(note =>
        typeof note === 'string' ? unworded(note, tongue) : words.note(note)
      ),
      ...(compared ? [comparedText(compared, tongue)] : [])
    ]
  }
}

/** A text that evaluation words in English; another language lacks it. */
function unworded(text: string, { language, lacks }: Tongue): string {
  if (language !== 'en') lacks({ is: 'text', text })
  return text
}

function outcomeText({ estimate, quantity, below }: Result, more: number, tongue: Tongue): string {
  const { working: words, numbers } = tongue
  const { U, k, df } = expand(estimate)
  const unit = unitText(quantity).printed
  const shown = (printed: string) => withUnit(numbers.number(printed), unit)
  const figures = resultFigures(estimate.value, U, more)
  const outcome = words.outcome(
    `${shown(figures.value.printed)} ± ${shown(figures.expandedUncertainty.printed)}`,
    numbers.number(significant(k, 3).printed),
    Number.isFinite(df) ? df : undefined
  )
  return below === undefined ? outcome : words.below(outcome, shown(reportingLimitText(below)))
}

const text = (title: string) => ({ title, numeric: false })
const number = (title: string) => ({ title, numeric: true })

function readingsTable(
  { columns, rows }: WrittenReadings,
  { each }: Result,
  { working: words, numbers }: Tongue
): Table {
  const labelled = columns[0] === 'Sheet'
  const titles = columns.map(words.column)
  const cell = (said: Cell) =>
    typeof said === 'string' ? numbers.number(said) : words.several(said.map(numbers.number))
  return {
    caption: words.recorded,
    columns: labelled
      ? [text(titles[0]!), ...titles.slice(1).map(number)]
      : [text(words.columns.reading), ...titles.map(number)],
    rows: rows.map((row, index) =>
      labelled
        ? [String(row[0]), ...row.slice(1).map(cell)]
        : [each[index]?.label.replace('reading ', '') ?? '', ...row.map(cell)]
    )
  }
}

function inputsTable({ inputs, inputsOf, instrumentOf }: Trace, tongue: Tongue): Table {
  const { working: words, results } = tongue
  const { input, value, uncertainty, instrument } = words.columns
  return {
    caption: inputsOf ? words.inputsOf(results.place(inputsOf)) : words.inputs,
    columns: [text(input), number(value), number(uncertainty), text(instrument)],
    rows: inputs.map(line => inputRow(line, instrumentOf[line.input] ?? '', tongue))
  }
}

function inputRow({ input, value, u }: InputLine, instrument: string, tongue: Tongue): string[] {
  const { unit } = inputParts(input)
  const title = inputTitle(input, tongue)
  const figure = (printed: string) => withUnit(tongue.numbers.number(printed), unit)
  if (u === 0) return [title, figure(plain(value)), tongue.working.exact, instrument]
  const { value: shown, U: shownU } = roundResult(value, u)
  return [title, figure(withMinus(shown)), figure(shownU), instrument]
}

function inputTitle(input: string, tongue: Tongue): string {
  const { name } = inputParts(input)
  return tongue.working.input(name) ?? unworded(name, tongue)
}

/** An exact input without digits nobody wrote. */
const plain = (value: number) => withMinus(toDecimal(value).toSignificantDigits(9).toFixed())

function budgetTable({ estimate, quantity }: Result, tongue: Tongue): Table {
  const { working: words, numbers } = tongue
  const { cause, type, uncertainty, freedom, share } = words.columns
  const unit = unitText(quantity).printed
  return {
    caption: words.budget,
    columns: [
      text(cause),
      text(type),
      number(unit ? words.inUnit(uncertainty, unit) : uncertainty),
      number(freedom),
      number(share)
    ],
    rows: budgetOf(estimate).map(line => [
      lineName(line, tongue),
      line.kind,
      numbers.number(significant(line.u, 2).printed),
      freedomText(line.df, tongue),
      shareText(line.share)
    ])
  }
}

const lineName = ({ pool, line }: BudgetLine, tongue: Tongue): string =>
  line
    ? tongue.working.budgetLine(line, key => titleOf(key, tongue), tongue.own)
    : unworded(pool, tongue)

/** A quantity's title by its key. */
function titleOf(key: string, tongue: Tongue): string {
  const quantity = quantityOf(key)
  return quantity ? wordsOf(tongue, quantity).title : unworded(key, tongue)
}

const freedomText = (df: number, { results, numbers }: Tongue): string =>
  Number.isFinite(df) ? numbers.number(freedomFigure(df).printed) : results.unlimited

/** Whole per cent; what rounds to none is not nothing. */
const shareText = (share: number) =>
  share < 0.005 ? '< 1 %' : `${roundToPlaces(toDecimal(100 * share), 0)} %`
