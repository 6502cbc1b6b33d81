/**
 * Results without readings, measured elsewhere or before these records. Where a lot has no figure of its
 * own the report stands in its place; where it has one, ours is judged and the report stands beside it.
 *
 * Source of the comparison: the number E of ISO 13528, |x − x′| / √(U² + U′²), above 1 where two results
 * differ by more than their expanded uncertainties explain (from memory, not checked against the print).
 */

import type { BudgetLineParts } from '../metrology/budget-line.ts'
import { expand } from '../metrology/coverage.ts'
import { type Estimate, estimate, measured, rectangular, type Term } from '../metrology/estimate.ts'
import type { Reading } from '../metrology/written.ts'
import {
  quantities,
  type Quantity,
  type QuantityKey,
  type QuantityName,
  titleInSentence
} from '../quantities.ts'
import type { ReportedRecord } from '../records/schemas/reported.ts'
import { type Bench, report } from './bench.ts'
import { PRODUCER, UNNAMED } from './measurers.ts'
import type { Report, Result } from './types.ts'

export type Reports = { readonly [Key in QuantityKey]?: ReportedRecord | undefined }

/** Reports on quantities that lots of this kind do not have. */
export function checkReported(bench: Bench, names: readonly string[], reports: Reports): void {
  const reported = Object.keys(reports)
  // Most lots have none, and every lot passes here.
  if (reported.length === 0) return
  const keys = names.map(name => quantities[name as QuantityName].key as string)
  for (const key of reported)
    if (!keys.includes(key))
      report(bench, ['reported', key], 'INVALID_VALUE', [
        'is no quantity that a lot of this kind has',
        'write it in the record of the lot that was sent to the laboratory'
      ])
  checkConditions(bench, reports)
}

/** A creep, a leak or a gasket factor says nothing without what it was found at. */
function checkConditions(bench: Bench, reports: Reports): void {
  for (const { key, conditions } of Object.values<Quantity>(quantities)) {
    const record = reports[key as QuantityKey]
    if (record && conditions && record.method === undefined && record.scope === undefined)
      report(bench, ['reported', key], 'MISSING_FIELD', [
        `is reported without its conditions: ${conditions}`,
        "write them as 'scope:', as the report states them"
      ])
  }
}

/** A lot's figure: its own, the reported one, or its own with the reported one beside it. */
export function withReported(
  bench: Bench,
  quantity: QuantityName,
  own: Result | undefined,
  reports: Reports
): Result | undefined {
  const record = reports[quantities[quantity].key]
  if (!record) return own
  const reported = reportedResult(bench, quantity, record)
  if (!own) return reported
  warnContradicted(bench, own, reported)
  return { ...own, compared: reported }
}

function reportedResult(bench: Bench, quantity: QuantityName, record: ReportedRecord): Result {
  const { key } = quantities[quantity]
  const { lessThan, date } = record
  const as = reportOf(record)
  return {
    quantity,
    estimate: estimateFrom(record, `${bench.lot} ${key} by report ${record.report}`, {
      is: 'reported',
      lot: bench.lot,
      quantity: key,
      report: record.report
    }),
    n: 0,
    tested: date,
    each: [],
    readings: [],
    ...(lessThan ? { below: lessThan.value } : {}),
    report: as,
    field: ['reported', key],
    // Its report is all there is to tell.
    trace: () => ({ formula: '', source: '', inputs: [], instrumentOf: {}, notes: [] })
  }
}

function reportOf(record: ReportedRecord): Report {
  const { value, lessThan, expandedUncertainty, coverageFactor } = record
  return {
    number: record.report,
    date: record.date,
    by: measurerOf(record),
    ...(record.own ? { isOwn: true as const } : {}),
    value: (value ?? lessThan!).decimal,
    ...(expandedUncertainty ? { expandedUncertainty: expandedUncertainty.decimal } : {}),
    ...(coverageFactor ? { coverageFactor: coverageFactor.decimal } : {}),
    ...(record.withoutUncertainty === undefined
      ? {}
      : { withoutUncertainty: withoutStop(record.withoutUncertainty) }),
    ...(record.method === undefined ? {} : { method: withoutStop(record.method) }),
    ...(record.scope === undefined ? {} : { scope: withoutStop(record.scope) }),
    ...(record.fileSha256 === undefined ? {} : { sha256: record.fileSha256 })
  }
}

const measurerOf = ({ own, namePublic, laboratory }: ReportedRecord): string => {
  if (own) return PRODUCER
  return namePublic && laboratory !== undefined ? laboratory : UNNAMED
}

const withoutStop = (sentence: string) => sentence.replace(/\.$/u, '')

/**
 * The reported figure for those that build on it. Of a value without uncertainty its last digit is all
 * that is known; of 'less than L', that it lies between 0 and L (JCGM 100:2008, 4.3.7).
 */
function estimateFrom(record: ReportedRecord, name: string, line: BudgetLineParts): Estimate {
  const { value, lessThan, expandedUncertainty, coverageFactor } = record
  if (lessThan)
    return measured(lessThan.value / 2, rectangular(lessThan.value / 2), name, Infinity, line)
  const { value: x, resolution } = value as Reading
  const u = expandedUncertainty && expandedUncertainty.value / coverageFactor!.value
  const term: Term = {
    cause: { name, pool: name, kind: 'B', df: Infinity, line },
    u: u ?? rectangular(resolution)
  }
  return estimate(x, [term])
}

/** Two results of one lot further apart than their uncertainties explain: one of them is wrong. */
function warnContradicted(bench: Bench, own: Result, reported: Result): void {
  const theirs = reported.report!
  if (own.below !== undefined || reported.below !== undefined || !theirs.expandedUncertainty) return
  const apart = Math.abs(own.estimate.value - reported.estimate.value)
  const explained = Math.hypot(expand(own.estimate).U, Number(theirs.expandedUncertainty))
  if (apart <= explained) return
  const { unit } = quantities[own.quantity]
  const shown = (value: number) =>
    `${Number(value.toPrecision(4))}${unit === '1' ? '' : ` ${unit}`}`
  report(bench, reported.field, 'CONTRADICTION', [
    `${titleInSentence(own.quantity)} was reported as ${shown(reported.estimate.value)}, our own figure is ${shown(own.estimate.value)}: they lie ${shown(apart)} apart, more than their uncertainties explain (${shown(explained)})`,
    'find out which is wrong; the lot is judged by its own figure'
  ])
}
