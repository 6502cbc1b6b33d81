/** A plan as lines for a terminal. */

import type { PlanDocument } from './plan-types.ts'
import type { Table } from './types.ts'

const WIDTH = 96

export const planText = (plan: PlanDocument): string =>
  [
    plan.title,
    '',
    ...pairs(plan.facts.map(({ label, text }) => [label, text])),
    '',
    ...tableLines(plan.amounts),
    '',
    'What it comes to',
    ...plan.figures.flatMap(({ label, value, unit, note }) => [
      `  ${label}: ${[value.printed, unit].filter(Boolean).join(' ')}`,
      ...(note === undefined ? [] : wrapped(note, '      '))
    ]),
    '',
    ...plan.cautions.flatMap(({ heading, texts }) => [
      heading,
      ...texts.flatMap(text => wrapped(text, '    ', '  - ')),
      ''
    ]),
    ...plan.statements.flatMap(text => wrapped(text, ''))
  ].join('\n') + '\n'

function pairs(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(...rows.map(([label]) => label.length)) + 2
  return rows.flatMap(([label, text]) =>
    wrapped(text, ' '.repeat(width + 2), `  ${label.padEnd(width)}`)
  )
}

function tableLines({ caption, columns, rows }: Table): string[] {
  const all = [columns.map(({ title }) => title), ...rows]
  const widths = columns.map((_, index) => Math.max(...all.map(row => row[index]!.length)))
  const lines = all.map(row =>
    row
      .map((cell, index) =>
        columns[index]!.numeric ? cell.padStart(widths[index]!) : cell.padEnd(widths[index]!)
      )
      .join('  ')
      .trimEnd()
  )
  return [caption, ...lines.map(line => `  ${line}`)]
}

/** A text cut at blanks, to the width of a terminal. */
function wrapped(text: string, indent: string, first = indent): string[] {
  const lines: string[] = []
  let line = first
  for (const word of text.split(' ')) {
    const joined = line.trim() === '' || line === first ? line + word : `${line} ${word}`
    if (joined.length > WIDTH && line.trim() !== '' && line !== first) {
      lines.push(line)
      line = indent + word
    } else line = joined
  }
  return [...lines, line]
}
