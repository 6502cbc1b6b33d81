/** Results measured elsewhere or earlier, as readers see them: as their report prints them, and marked. */

import type { Report, Result } from '../evaluate/types.ts'
import type { Scope } from '../judge/types.ts'
import { PRODUCER, UNNAMED } from '../evaluate/measurers.ts'
import { exactText } from '../metrology/rounding.ts'
import { quantities } from '../quantities.ts'
import { unitText, withUnit, writtenFigure } from './figure.ts'
import type { ReportText } from './report-text.ts'
import type { ResultRow, Working } from './types.ts'
import { english, spoken, type Tongue, wordsOf } from './languages/tongue.ts'
import { unparted, withMinus } from './words.ts'

/** Who measured it: by name, or as one that is not named. */
export const measurerIn = (by: string, { results }: Tongue): string =>
  by === UNNAMED || by === PRODUCER ? results.measurers[by] : by

/** A report with the record's own words in a language; the laboratory's name stays as it is. */
const inTongue = (report: Report, tongue: Tongue): Report => ({
  ...report,
  by: measurerIn(report.by, tongue),
  ...(report.method === undefined ? {} : { method: tongue.own(report.method) }),
  ...(report.scope === undefined ? {} : { scope: tongue.own(report.scope) }),
  ...(report.withoutUncertainty === undefined
    ? {}
    : { withoutUncertainty: tongue.own(report.withoutUncertainty) })
})

const reportText = (report: Report, tongue: Tongue): ReportText => ({
  by: report.by,
  ...(report.isOwn ? { own: report.isOwn } : {}),
  number: report.number,
  date: report.date,
  sentence: unparted(tongue.results.report(report)),
  ...(report.scope === undefined ? {} : { scope: report.scope }),
  ...(report.method === undefined ? {} : { method: report.method }),
  ...(report.sha256 === undefined ? {} : { sha256: report.sha256 })
})

/** A reported figure with the digits of its report. */
export function reportedPart(
  said: Report,
  below: number | undefined,
  tongue = english
): Partial<ResultRow> {
  const report = inTongue(said, tongue)
  const figure = (decimal: string) => spoken(tongue, writtenFigure(decimal))
  const { value, expandedUncertainty: U, coverageFactor: k, date } = report
  const shared = { testedOn: date, report: reportText(report, tongue) }
  if (below !== undefined)
    return {
      ...shared,
      value: { exact: exactText(below), printed: `< ${figure(value).printed}` },
      below: true
    }
  if (U === undefined || k === undefined) return { ...shared, value: figure(value) }
  return {
    ...shared,
    value: figure(value),
    expandedUncertainty: figure(U),
    coverageFactor: figure(k),
    standardUncertainty: spoken(tongue, {
      exact: exactText(Number(U) / Number(k)),
      printed: exactText(Number(U) / Number(k))
    })
  }
}

/** '2.31 % ± 0.12 %', '< 10 mg/kg' or '2.31 %, no uncertainty stated'. */
function reportedFigure(
  { report, below, quantity }: Result,
  { numbers, results } = english
): string {
  const unit = unitText(quantity).printed
  const { value, expandedUncertainty: U } = report!
  const shown = withUnit(numbers.number(withMinus(value)), unit)
  if (below !== undefined) return `< ${shown}`
  return U === undefined
    ? `${shown}, ${results.noUncertainty}`
    : `${shown} ± ${withUnit(numbers.number(U), unit)}`
}

/** What a report gives beside our own figure, in one sentence. */
export const comparedText = (compared: Result, tongue = english): string =>
  unparted(
    tongue.results.beside(reportedFigure(compared, tongue), inTongue(compared.report!, tongue))
  )

/** The working of a figure that was worked out elsewhere. */
export function reportedWorking(result: Result, tongue: Tongue): Working {
  const { working: words } = tongue
  const { formula, source, method, scope, withoutUncertainty } = words.reported
  const none = (caption: string) => ({ caption, columns: [], rows: [] })
  const said = inTongue(result.report!, tongue)
  const note = (text: string | undefined, worded: (text: string) => string) =>
    text === undefined ? [] : [worded(text)]
  return {
    key: quantities[result.quantity].key,
    title: wordsOf(tongue, result.quantity).title,
    formula,
    statements: [{ text: formula }],
    source: source(said),
    outcome: reportedFigure(result, tongue),
    inputs: none(words.inputs),
    budget: none(words.budget),
    notes: [
      ...note(said.method, method),
      ...note(said.scope, scope),
      ...note(said.withoutUncertainty, withoutUncertainty)
    ]
  }
}

/** A limit with its unit, what it holds for, and how a figure stands to it. */
interface Held {
  readonly limit: string
  readonly scope: Scope
  readonly stands: string
}

/** Why a reported figure meets its limit or not, or cannot decide it. */
export function reportedSentence(
  result: Result,
  { limit, scope, stands }: Held,
  tongue: Tongue
): string {
  const { results } = tongue
  const shown = reportedFigure(result, tongue)
  const isOwn = result.report?.isOwn ?? false
  return scope === 'lot mean'
    ? results.reported(shown, isOwn, stands)
    : results.reportedOfLot(shown, isOwn, limit, scope)
}
