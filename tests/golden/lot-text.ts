/** A lot's page as plain text: what a reader is told, line by line, for a plain diff. */

import type { LotPage, ResultRow } from '../../src/documents/types.ts'

const withUnit = (text: string, unit: string) => (unit ? `${text} ${unit}` : text)

function rowLines(row: ResultRow): string[] {
  const unit = row.unit.printed
  const value = row.value ? withUnit(row.value.printed, unit) : row.basis
  const expanded = row.expandedUncertainty
    ? ` ± ${withUnit(row.expandedUncertainty.printed, unit)} (k = ${row.coverageFactor?.printed}, ${row.degreesOfFreedom?.printed} degrees of freedom)`
    : ''
  return [
    `${row.title}: ${value}${expanded}${row.basis === 'typical' ? ', typical' : ''}`,
    ...(row.spread ? [`  ${row.spread}`] : []),
    ...(row.limit ? [`  limit ${withUnit(row.limit.printed, unit)}, ${row.limit.of}`] : []),
    ...(row.verdict
      ? [
          `  ${row.verdict.word}: ${row.verdict.sentence}`,
          ...(row.verdict.probability
            ? [`  conforms with ${row.verdict.probability.printed} %`]
            : [])
        ]
      : []),
    ...(row.decidedBy ? [`  decided by ${row.decidedBy.printed}`] : [])
  ]
}

/** The text of one lot. */
export function lotText({ document, process, certificates }: LotPage): string {
  const lines = [
    `${document.lot}, ${document.kind}`,
    document.status.sentence,
    document.answer.sentence,
    ...document.notices.map(notice => `Notice: ${notice}`),
    '',
    ...document.results.flatMap(rowLines),
    ...(process?.results.length ? ['', ...process.results.flatMap(rowLines)] : []),
    ...(process?.notices ?? []).map(notice => `Workshop notice: ${notice}`),
    '',
    `Chain: ${document.chain.map(({ lot }) => lot).join(', ')}`,
    ...certificates.map(
      ({ document: { number, revision, mark } }) =>
        `Paper: ${number === undefined ? 'preview' : `${number}, revision ${revision}`}${mark ? ` (${mark})` : ''}`
    )
  ]
  return `${lines.join('\n')}\n`
}
