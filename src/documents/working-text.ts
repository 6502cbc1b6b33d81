/** A figure's working as text, for a terminal. */

import type { ResultRow, Table, Working } from './types.ts'

/** A figure with its working, and whether customers may see it. */
export interface ExplainedFigure {
  readonly working: Working
  readonly row?: ResultRow
  readonly isPrivate: boolean
}

/** The whole working: formula, inputs, readings, budget, and what came of it. */
export function workingText(lot: string, { working, row, isPrivate }: ExplainedFigure): string {
  const { title, outcome, formula, source, method, readings, inputs, budget, notes } = working
  return [
    `${lot}  ${title}${isPrivate ? '  (process figure: private)' : ''}`,
    outcome,
    ...(row?.verdict ? [row.verdict.sentence] : []),
    '',
    `Formula  ${formula}`,
    `Source   ${source}`,
    ...(method === undefined ? [] : [`Method   ${method}`]),
    ...(readings ? tableText(readings) : []),
    ...tableText(inputs),
    ...tableText(budget),
    ...(notes.length > 0 ? ['', ...notes.map(note => `– ${note}`)] : [])
  ]
    .map(line => `${line.trimEnd()}\n`)
    .join('')
}

/** Columns side by side, figures to the right; none without rows. */
function tableText({ caption, columns, rows }: Table): string[] {
  if (rows.length === 0) return []
  const all = [columns.map(({ title }) => title), ...rows]
  const widths = columns.map((_, index) => Math.max(...all.map(row => (row[index] ?? '').length)))
  const lineOf = (row: readonly string[]) =>
    columns
      .map(({ numeric }, index) => {
        const cell = row[index] ?? ''
        return numeric ? cell.padStart(widths[index]!) : cell.padEnd(widths[index]!)
      })
      .join('  ')
  return ['', caption, ...all.map(row => `  ${lineOf(row)}`)]
}

/** One line a figure: its key, for the command, and what it came to. */
export function figureList(lot: string, figures: readonly ExplainedFigure[]): string {
  const width = Math.max(0, ...figures.map(({ working }) => working.key.length))
  return [
    `${lot}  ${figures.length} figures to explain:`,
    ...figures.map(
      ({ working: { key, title, outcome }, isPrivate }) =>
        `  ${key.padEnd(width)}  ${title}: ${outcome}${isPrivate ? '  (private)' : ''}`
    )
  ]
    .map(line => `${line}\n`)
    .join('')
}
