/** A result's working: what a reader needs to recompute the figure. */

import type { Result, Trace, WrittenReadings } from '../evaluate/types.ts'
import { expand } from '../metrology/coverage.ts'
import { budgetOf, type InputLine } from '../metrology/estimate.ts'
import { roundResult, roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import { quantities } from '../quantities.ts'
import {
  freedomFigure,
  inputText,
  reportingLimitText,
  resultFigures,
  significant,
  unitText,
  withUnit
} from './figure.ts'
import { english } from './languages/tongue.ts'
import { fieldText } from './thickness-field.ts'
import { plainFormula, readFormula } from './formula.ts'
import { comparedText, reportedWorking } from './reported.ts'
import type { Table, Working } from './types.ts'
import { counted, unparted, withMinus } from './words.ts'

/**
 * The working of one figure.
 *
 * @param more digits it is printed with beyond U's second, as in its row
 */
export function workingOf(result: Result, more = 0): Working {
  if (result.report) return reportedWorking(result)
  const { quantity, compared, method, remark } = result
  const trace = result.trace()
  const { key, title } = quantities[quantity]
  return {
    key,
    title,
    formula: plainFormula(trace.formula),
    statements: readFormula(trace.formula),
    source: trace.source,
    ...(method
      ? { method: `${method.id}, edition ${method.edition}: ${unparted(method.title)}` }
      : {}),
    outcome: outcomeText(result, more),
    ...(trace.readings ? { readings: readingsTable(trace.readings, result) } : {}),
    inputs: inputsTable(trace),
    budget: budgetTable(result),
    notes: [
      ...(remark === undefined ? [] : [english.results.remark(remark)]),
      ...trace.notes,
      ...(compared ? [comparedText(compared)] : [])
    ],
    ...(trace.field ? { field: fieldText(trace.field) } : {})
  }
}

function outcomeText({ estimate, quantity, below }: Result, more: number): string {
  const { U, k, df } = expand(estimate)
  const unit = unitText(quantity).printed
  const figures = resultFigures(estimate.value, U, more)
  const sum = `${withUnit(figures.value.printed, unit)} ± ${withUnit(figures.expandedUncertainty.printed, unit)}`
  const freedom = Number.isFinite(df)
    ? counted(df, 'degree of freedom', 'degrees of freedom')
    : 'unlimited degrees of freedom'
  const cover = `(k = ${significant(k, 3).printed}, ${freedom})`
  return below === undefined
    ? `${sum} ${cover}`
    : `${sum} ${cover}, below the reporting limit of ${withUnit(reportingLimitText(below), unit)}`
}

const text = (title: string) => ({ title, numeric: false })
const number = (title: string) => ({ title, numeric: true })

function readingsTable({ columns, rows }: WrittenReadings, { each }: Result): Table {
  const labelled = columns[0] === 'Sheet'
  return {
    caption: 'As recorded',
    columns: labelled
      ? [text(columns[0]!), ...columns.slice(1).map(number)]
      : [text('Reading'), ...columns.map(number)],
    rows: labelled
      ? rows
      : rows.map((row, index) => [each[index]?.label.replace('reading ', '') ?? '', ...row])
  }
}

function inputsTable({ inputs, inputsOf, instrumentOf }: Trace): Table {
  return {
    caption: inputsOf ? `Inputs of ${inputsOf}` : 'Inputs',
    columns: [text('Input'), number('Value'), number('Standard uncertainty'), text('Instrument')],
    rows: inputs.map(line => inputRow(line, instrumentOf[line.input] ?? ''))
  }
}

function inputRow({ input, value, u }: InputLine, instrument: string): string[] {
  const { title, unit } = inputText(input)
  if (u === 0) return [title, withUnit(plain(value), unit), 'taken as exact', instrument]
  const { value: shown, U: shownU } = roundResult(value, u)
  return [title, withUnit(withMinus(shown), unit), withUnit(shownU, unit), instrument]
}

/** An exact input without digits nobody wrote. */
const plain = (value: number) => withMinus(toDecimal(value).toSignificantDigits(9).toFixed())

function budgetTable({ estimate, quantity }: Result): Table {
  const unit = unitText(quantity).printed
  return {
    caption: 'What the uncertainty comes from',
    columns: [
      text('Cause'),
      text('Type'),
      number(`Standard uncertainty${unit ? `, ${unit}` : ''}`),
      number('Degrees of freedom'),
      number('Share of the variance')
    ],
    rows: budgetOf(estimate).map(line => [
      line.pool,
      line.kind,
      significant(line.u, 2).printed,
      freedomFigure(line.df).printed,
      shareText(line.share)
    ])
  }
}

/** Whole per cent; what rounds to none is not nothing. */
const shareText = (share: number) =>
  share < 0.005 ? '< 1 %' : `${roundToPlaces(toDecimal(100 * share), 0)} %`
