/** Results measured elsewhere or earlier, as readers see them: as their report prints them, and marked. */

import type { Report, Result } from '../evaluate/types.ts'
import { exactText } from '../metrology/rounding.ts'
import { quantities } from '../quantities.ts'
import { unitText, withUnit, writtenFigure } from './figure.ts'
import type { ReportText } from './report-text.ts'
import type { ResultRow, Working } from './types.ts'
import { dateText, unparted, withMinus } from './words.ts'

/** Whose result it is, in one sentence. */
function reportSentence(report: Report): string {
  const { by, number, date, method, scope, withoutUncertainty, isOwn } = report
  const parts = [
    isOwn
      ? `Own earlier result: measured by ${by}, taken over without its readings from record ${number} of ${dateText(date)}`
      : `External result: measured by ${by}, report ${number} of ${dateText(date)}`,
    method && `method as reported: ${method}`,
    scope && `scope: ${scope}`,
    withoutUncertainty && `no uncertainty is stated: ${withoutUncertainty}`
  ]
  return unparted(`${parts.filter(part => part).join('; ')}.`)
}

export const reportText = (report: Report): ReportText => ({
  by: report.by,
  ...(report.isOwn ? { own: report.isOwn } : {}),
  number: report.number,
  date: report.date,
  sentence: reportSentence(report),
  ...(report.scope === undefined ? {} : { scope: report.scope }),
  ...(report.method === undefined ? {} : { method: report.method }),
  ...(report.sha256 === undefined ? {} : { sha256: report.sha256 })
})

/** A reported figure with the digits of its report. */
export function reportedPart(report: Report, below: number | undefined): Partial<ResultRow> {
  const { value, expandedUncertainty: U, coverageFactor: k, date } = report
  const shared = { testedOn: date, report: reportText(report) }
  if (below !== undefined)
    return {
      ...shared,
      value: { exact: exactText(below), printed: `< ${withMinus(value)}` },
      below: true
    }
  if (U === undefined || k === undefined) return { ...shared, value: writtenFigure(value) }
  return {
    ...shared,
    value: writtenFigure(value),
    expandedUncertainty: writtenFigure(U),
    coverageFactor: writtenFigure(k),
    standardUncertainty: {
      exact: exactText(Number(U) / Number(k)),
      printed: exactText(Number(U) / Number(k))
    }
  }
}

/** '2.31 % ± 0.12 %', '< 10 mg/kg' or '2.31 %, no uncertainty stated'. */
export function reportedFigure({ report, below, quantity }: Result): string {
  const unit = unitText(quantity).printed
  const { value, expandedUncertainty: U } = report!
  const shown = withUnit(withMinus(value), unit)
  if (below !== undefined) return `< ${shown}`
  return U === undefined ? `${shown}, no uncertainty stated` : `${shown} ± ${withUnit(U, unit)}`
}

/** What a report gives beside our own figure, in one sentence. */
export const comparedText = (compared: Result): string =>
  unparted(`${reportedFigure(compared)} ${standsBeside(compared.report!)}.`)

const standsBeside = ({ by, number, date, isOwn }: Report) =>
  isOwn
    ? `stands beside it in the producer's own earlier record ${number} of ${dateText(date)}`
    : `was reported beside it by ${by}, report ${number} of ${dateText(date)}`

/** The working of a figure that was worked out elsewhere. */
export function reportedWorking(result: Result): Working {
  const { formula, source, notes } = result.trace()
  const none = (caption: string) => ({ caption, columns: [], rows: [] })
  return {
    key: quantities[result.quantity].key,
    title: quantities[result.quantity].title,
    formula,
    statements: [{ text: formula }],
    source,
    outcome: reportedFigure(result),
    inputs: none('Inputs'),
    budget: none('What the uncertainty comes from'),
    notes
  }
}

/** Why a reported figure meets its limit or not, or cannot decide it. */
export function reportedSentence(
  result: Result,
  limit: string,
  scope: string,
  standing: string
): string {
  const shown = reportedFigure(result)
  const told = result.report?.isOwn ? 'recorded' : 'reported'
  if (scope !== 'lot mean')
    return `${shown} was ${told} for the lot; the limit of ${limit} holds for ${scope}.`
  return `${shown}, as ${told}, is ${standing}.`
}
