/** Years of old lots, one a line of a list, as records; what cannot be understood is told line by line. */

import { type FieldPath, type Problem, problemAt, quoted } from '../problem.ts'
import { dataWith, type RecordValue } from '../records/edit.ts'
import { fieldShape, valueFault } from '../records/field-shape.ts'
import type { Kind } from '../records/kinds.ts'
import { draftKinds } from '../records/draft-fields.ts'
import { knownFields } from '../records/known-fields.ts'
import { schemas } from '../records/kinds.ts'
import type { Movable } from '../records/schemas/mapping.ts'
import type { Entry, Mapping } from '../records/types.ts'
import { blockText } from '../records/value-text.ts'
import { type Cell, cellProblem, type Sheet } from '../tables/sheet.ts'
import { type Lines, linesOf, strayColumns } from './columns.ts'
import { styleOf } from './items.ts'
import {
  type FigureColumn,
  type Filling,
  type ListedFigure,
  type Reader,
  readFigure,
  readValue
} from './values.ts'

/** A line of the list: the record it becomes, or why it becomes none. */
export interface OldLot {
  readonly lot: string
  /** Line of the file, from 1. */
  readonly line: number
  readonly text?: string
  readonly problems: readonly Problem[]
  /** Figures that the line gives itself. */
  readonly figures: readonly ListedFigure[]
  /** Figures of the line that cannot be read as one: each with why. */
  readonly unread: readonly Problem[]
}

interface Constant {
  readonly path: FieldPath
  readonly text: string
}

export const movableKind = (fills: string): Kind | undefined =>
  Object.hasOwn(draftKinds, fills) ? draftKinds[fills as Movable] : undefined

/**
 * Every line of a list as a record.
 *
 * @param kind what the lines are records of
 * @param isDraft whether they are marked as unfinished
 * @returns the lines, or what is wrong with the file or its mapping as a whole
 */
export function oldLots(
  sheet: Sheet,
  mapping: Entry<Mapping>,
  kind: Kind,
  isDraft: boolean
): readonly OldLot[] | { problems: readonly Problem[] } {
  const lines = linesOf(sheet, mapping.record)
  if ('problems' in lines) return lines
  const problems = strayColumns(lines, mapping.record)
  const fillings = fillingsOf(lines, mapping, kind, problems)
  const columns = figureColumns(lines, mapping.record)
  const constants = constantsOf(mapping, kind, problems)
  const style = styleOf(lines, mapping.record, fillings)
  if ('code' in style) problems.push(style)
  if (problems.length > 0 || 'code' in style) return { problems }
  const reader = { sheet, kind, style }
  const seen = new Set<string>()
  return lines.rows.flatMap(row => {
    const skipped = Object.entries(mapping.record.skip ?? {}).some(([name, words]) =>
      words.includes(row[lines.named(name)?.index ?? -1]?.text ?? '')
    )
    if (skipped) return []
    const lot = oldLot(reader, row, fillings, constants, isDraft, seen)
    return [{ ...lot, ...figuresIn(reader, row, columns) }]
  })
}

/** 'charge.1.mass' → charge, the first, mass. */
const pathOf = (field: string): FieldPath =>
  field.split('.').map(step => (/^\d+$/u.test(step) ? Number(step) - 1 : step))

function noField(mapping: Entry<Mapping>, at: (string | number)[], field: string): Problem {
  return problemAt(
    mapping.at(at),
    'UNKNOWN_FIELD',
    `${quoted(field)} is no field of such a record`,
    'write the way to it with points, such as product.mass or charge.1.mass'
  )
}

function fillingsOf(
  lines: Lines,
  mapping: Entry<Mapping>,
  kind: Kind,
  problems: Problem[]
): Filling[] {
  return mapping.record.columns.flatMap((mapped, index): Filling[] => {
    const column = lines.named(mapped.column)
    if (mapped.to === undefined || !column) return []
    const path = pathOf(mapped.to)
    const shape = fieldShape(kind, path)
    if (shape && shape.is !== 'group')
      return [{ mapped, column, to: { level: 'part', path, field: mapped.to, shape } }]
    problems.push(noField(mapping, ['columns', index, 'to'], mapped.to))
    return []
  })
}

const figureColumns = (lines: Lines, { columns }: Mapping): FigureColumn[] =>
  columns.flatMap(mapped => {
    const column = lines.named(mapped.column)
    return mapped.figure !== undefined && column ? [{ key: mapped.figure, mapped, column }] : []
  })

/** What the list says of a lot's figures itself. */
function figuresIn(
  reader: Reader,
  row: readonly Cell[],
  columns: readonly FigureColumn[]
): Pick<OldLot, 'figures' | 'unread'> {
  const figures: ListedFigure[] = []
  const unread: Problem[] = []
  for (const figure of columns) {
    const cell = row[figure.column.index]
    if (!cell || cell.text === '') continue
    const read = readFigure(reader, figure, cell)
    if ('key' in read) figures.push(read)
    else {
      const [code, message, hint] = read
      unread.push(cellProblem(reader.sheet, cell, [figure.column.name], code, [message, hint]))
    }
  }
  return { figures, unread }
}

function constantsOf(mapping: Entry<Mapping>, kind: Kind, problems: Problem[]): Constant[] {
  return Object.entries(mapping.record.set ?? {}).flatMap(([field, text]) => {
    const path = pathOf(field)
    const fault = fieldShape(kind, path) ? valueFault(kind, path, text) : undefined
    if (fieldShape(kind, path)?.is !== 'value')
      problems.push(noField(mapping, ['set', field], field))
    else if (fault)
      problems.push(problemAt(mapping.at(['set', field]), fault.code, fault.message, fault.hint))
    return [{ path, text }]
  })
}

function oldLot(
  reader: Reader,
  row: readonly Cell[],
  fillings: readonly Filling[],
  constants: readonly Constant[],
  isDraft: boolean,
  seen: Set<string>
): Omit<OldLot, 'figures' | 'unread'> {
  const problems: Problem[] = []
  const given: Constant[] = []
  for (const filling of fillings) {
    const cell = row[filling.column.index]
    if (!cell || cell.text === '') continue
    const value = readValue(reader, filling, cell)
    if ('code' in value) problems.push(value)
    else given.push({ path: filling.to.path, text: value.text })
  }
  const lot = given.find(({ path }) => path[0] === 'lot')?.text ?? ''
  const line = reader.sheet.file.text.slice(0, row[0]!.range[0]).split('\n').length
  const taken = lotFault(reader.sheet, row, fillings, lot, seen)
  if (taken) problems.push(taken)
  if (problems.length > 0) return { lot, line, problems }
  const all = [...given, ...constants.filter(({ path }) => isWanted(path, given))]
  return { lot, line, text: recordText(reader.kind, all, isDraft), problems }
}

function lotFault(
  sheet: Sheet,
  row: readonly Cell[],
  fillings: readonly Filling[],
  lot: string,
  seen: Set<string>
): Problem | undefined {
  const column = fillings.find(({ to }) => to.field === 'lot')?.column
  const cell = row[column?.index ?? 0] ?? row[0]!
  const refuse = (message: string, hint: string) =>
    cellProblem(
      sheet,
      cell,
      [column?.name ?? 'lot'],
      lot === '' ? 'MISSING_FIELD' : 'DUPLICATE_ID',
      [message, hint]
    )
  if (lot === '')
    return refuse('this line has no lot number', "map its column to 'lot', and fill it in")
  if (seen.has(lot.toLowerCase()))
    return refuse(`lot ${lot} stands on a line above`, 'keep one of the two')
  seen.add(lot.toLowerCase())
  return undefined
}

/** A field set for all is written at the top, or beside a value that this line has. */
const isWanted = (path: FieldPath, given: readonly Constant[]) =>
  path.length === 1 ||
  given.some(one => path.slice(0, -1).every((step, at) => one.path[at] === step))

/** The record, its fields in the order of the kind. */
function recordText(kind: Kind, values: readonly Constant[], isDraft: boolean): string {
  // Entries of a list from its first on.
  const ordered = [...values].sort((a, b) => Number(a.path[1]) - Number(b.path[1]) || 0)
  const data = dataWith(
    {},
    ordered.map(({ path, text }) => ({ path, value: text }))
  ) as Readonly<Record<string, RecordValue>>
  const marked: Readonly<Record<string, RecordValue>> = isDraft ? { ...data, draft: 'yes' } : data
  const names = knownFields(schemas[kind], [])
  const fields = names.flatMap(name => (name in marked ? [[name, marked[name]!] as const] : []))
  const file = kind === 'batches' ? 'batch' : kind.slice(0, -1)
  return `# yaml-language-server: $schema=../../schemas/${file}.json\n${blockText(Object.fromEntries(fields))}\n`
}
