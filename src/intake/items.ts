/** Lines of a file to readings: which lines make one, and which of their values it takes. */

import type { Decimal } from 'decimal.js'
import { type Problem, quoted } from '../problem.ts'
import type { RecordValue } from '../records/edit.ts'
import type { Mapping } from '../records/types.ts'
import { type NumberStyle, numberAndUnit, shownBy } from '../tables/numbers.ts'
import { type Cell, cellProblem, type Sheet } from '../tables/sheet.ts'
import { ALL_LINES, type Lines } from './columns.ts'
import { halfPlaced, withPlaces } from './places.ts'
import { type Filling, type Reader, readValue, type Value } from './values.ts'

/** A reading as a file gives it. */
export interface Item {
  readonly fields: ReadonlyMap<string, RecordValue>
  /** Its first line. */
  readonly row: readonly Cell[]
}

export interface Taken {
  readonly items: readonly Item[]
  /** Fields of the part around the readings. */
  readonly part: ReadonlyMap<string, RecordValue>
}

/** Values on their way, by field. */
type Bag = Map<string, { filling: Filling; at: number; value: Value }[]>

interface Group {
  readonly row: readonly Cell[]
  readonly bag: Bag
  /** Fields whose entry could not be read: that was said. */
  readonly failed: Set<string>
}

/** Read every line by the columns that fill something. */
export function takeItems(
  reader: Reader,
  lines: Lines,
  mapping: Mapping,
  fillings: readonly Filling[],
  key?: string
): Taken | { problems: Problem[] } {
  const problems: Problem[] = []
  const groups = new Map<string, Group>()
  const part: Bag = new Map()
  for (const [index, row] of lines.rows.entries()) {
    if (isSkipped(lines, mapping, row)) continue
    const meant = fillings.filter(({ mapped }) => isWhere(lines, mapped.where, row))
    if (meant.length === 0) problems.push(strayLine(reader.sheet, lines, fillings, row))
    problems.push(...halfPlaced(reader.sheet, meant, row))
    const group = groupFor(groups, lines, mapping, fillings, row, index, key)
    for (const filling of meant) {
      const cell = row[filling.column.index]
      if (!cell || cell.text === '') continue
      const value = readValue(reader, filling, cell)
      if ('code' in value) {
        problems.push(value)
        group.failed.add(filling.to.field)
      } else put(filling.to.level === 'part' ? part : group.bag, filling, fillings, value)
    }
  }
  const whole = [...groups.values()].filter(({ bag }) => bag.size > 0)
  problems.push(...whole.flatMap(group => missingIn(reader.sheet, group, fillings)))
  const items = whole.map(({ row, bag }) => ({
    row,
    fields: withPlaces(fieldsOf(reader.sheet, bag, problems))
  }))
  const around = fieldsOf(reader.sheet, part, problems)
  return problems.length > 0 ? { problems } : { items, part: around }
}

const textAt = ({ named }: Lines, name: string, row: readonly Cell[]) =>
  row[named(name)?.index ?? -1]?.text ?? ''

const isWhere = (
  lines: Lines,
  where: Readonly<Record<string, string>> | undefined,
  row: readonly Cell[]
) => Object.entries(where ?? {}).every(([name, word]) => textAt(lines, name, row) === word)

const isSkipped = (lines: Lines, { skip = {} }: Mapping, row: readonly Cell[]) =>
  Object.entries(skip).some(([name, words]) => words.includes(textAt(lines, name, row)))

function strayLine(
  sheet: Sheet,
  lines: Lines,
  fillings: readonly Filling[],
  row: readonly Cell[]
): Problem {
  const name = Object.keys(fillings[0]?.mapped.where ?? {})[0] ?? ''
  const cell = row[lines.named(name)?.index ?? 0] ?? row[0] ?? { range: [0, 1] as const }
  return cellProblem(sheet, cell, [name], 'UNMAPPED_COLUMN', [
    `the mapping says nothing of lines with ${quoted(textAt(lines, name, row))} here`,
    `write 'skip: { ${name}: [${textAt(lines, name, row)}] }' to pass over them`
  ])
}

/** The reading a line belongs to. */
function groupFor(
  groups: Map<string, Group>,
  lines: Lines,
  { reading }: Mapping,
  fillings: readonly Filling[],
  row: readonly Cell[],
  index: number,
  key?: string
): Group {
  const keyed = fillings.find(({ to }) => to.level === 'reading' && to.field === key)
  const name = reading ?? (keyed && keyed.column.name)
  const told =
    name === ALL_LINES ? '' : name === undefined ? `line ${index}` : textAt(lines, name, row)
  const group = groups.get(told) ?? { row, bag: new Map(), failed: new Set() }
  groups.set(told, group)
  return group
}

function put(bag: Bag, filling: Filling, fillings: readonly Filling[], value: Value): void {
  const { field } = filling.to
  bag.set(field, [...(bag.get(field) ?? []), { filling, at: fillings.indexOf(filling), value }])
}

/** A field the record needs, without an entry: told at the line, where it can be filled in. */
function missingIn(
  sheet: Sheet,
  { row, bag, failed }: Group,
  fillings: readonly Filling[]
): Problem[] {
  return fillings.flatMap(({ to, column, mapped }, index) => {
    if (to.level !== 'reading' || failed.has(to.field)) return []
    const given = bag.get(to.field) ?? []
    const isOwn = mapped.where && to.shape.is === 'list'
    if (isOwn ? given.some(({ at }) => at === index) : given.length > 0) return []
    if (!isOwn && !to.shape.isRequired) return []
    const [where] = Object.entries(mapped.where ?? {})
    return [
      cellProblem(sheet, row[column.index] ?? row[0]!, [column.name], 'MISSING_FIELD', [
        where ? `no line of this reading has ${quoted(where[1])} under ${where[0]}` : 'is blank',
        where
          ? 'add the line, or mend the mapping'
          : 'fill it in, or leave the line out of the file'
      ])
    ]
  })
}

function fieldsOf(sheet: Sheet, bag: Bag, problems: Problem[]): Map<string, RecordValue> {
  const fields = new Map<string, RecordValue>()
  for (const [field, given] of bag) {
    const { to, mapped, column } = given[0]!.filling
    if (to.shape.is === 'list') {
      // Lines picked by a word come in the order of the mapping, such as the sieves of a stack.
      const ordered = given.some(one => one.filling.mapped.where)
        ? [...given].sort((a, b) => a.at - b.at)
        : given
      fields.set(
        field,
        ordered.map(({ value }) => value.text)
      )
      continue
    }
    const value = oneOf(
      given.map(one => one.value),
      mapped.take
    )
    if (value) fields.set(field, value.text)
    else
      problems.push(
        severalValues(
          sheet,
          column.name,
          given.map(one => one.value)
        )
      )
  }
  return fields
}

/** The value of a field that takes one. */
function oneOf(values: readonly Value[], take: string | undefined): Value | undefined {
  if (take === 'first') return values[0]
  if (take === 'last') return values.at(-1)
  const by = (better: (a: Decimal, b: Decimal) => boolean) =>
    values.reduce((best, value) =>
      value.number && best.number && better(value.number, best.number) ? value : best
    )
  if (take === 'largest') return by((a, b) => a.greaterThan(b))
  if (take === 'smallest') return by((a, b) => a.lessThan(b))
  return values.every(({ text }) => text === values[0]!.text) ? values[0] : undefined
}

function severalValues(sheet: Sheet, name: string, values: readonly Value[]): Problem {
  const other = values.find(({ text }) => text !== values[0]!.text)!
  return cellProblem(sheet, other.cell, [name], 'ALREADY_RECORDED', [
    `is ${quoted(other.text)}, and ${quoted(values[0]!.text)} on another line of the same reading`,
    "write 'take: largest', smallest, first or last beside the column, or tell the readings apart"
  ])
}

/** The decimal mark that the numbers of a file show, unless the mapping states it; two are a fault. */
export function styleOf(
  lines: Lines,
  mapping: Mapping,
  fillings: readonly Filling[]
): NumberStyle | Problem {
  const stated = { decimal: mapping.file?.decimal, thousands: mapping.file?.thousands }
  const numbers = lines.rows
    .filter(row => !isSkipped(lines, mapping, row))
    .flatMap(row => numbersIn(lines, fillings, row))
  const point = numbers.find(({ shown }) => shown === 'point')
  const comma = numbers.find(({ shown }) => shown === 'comma')
  const [first] = numbers
  const mayBeCut = lines.sheet.delimiter === 'comma' && stated.decimal !== 'point'
  if (mayBeCut && first && !point && !comma)
    return cellProblem(lines.sheet, first.cell, [first.name], 'AMBIGUOUS_NUMBER', [
      `no number here has decimals, and a comma parts the entries: it may have cut ${quoted(first.cell.text)} short`,
      "write 'decimal: point' under 'file:' in the mapping if these are whole numbers"
    ])
  if (stated.decimal !== undefined || !point || !comma)
    return { ...stated, decimal: stated.decimal ?? (point ? 'point' : comma && 'comma') }
  const [later, earlier] =
    point.cell.range[0] > comma.cell.range[0] ? [point, comma] : [comma, point]
  return cellProblem(lines.sheet, later.cell, [later.name], 'AMBIGUOUS_NUMBER', [
    `${quoted(later.cell.text)} has another decimal mark than ${quoted(earlier.cell.text)}`,
    'mend the file where it is made: one of the two was typed by hand, or parts thousands'
  ])
}

function numbersIn(lines: Lines, fillings: readonly Filling[], row: readonly Cell[]) {
  return fillings.flatMap(({ to, column, mapped }) => {
    const cell = row[column.index]
    if (!cell || cell.isNumber || to.shape.unit === undefined) return []
    if (!isWhere(lines, mapped.where, row)) return []
    const number = numberAndUnit(cell.text)?.number
    return number === undefined ? [] : [{ cell, name: column.name, shown: shownBy(number) }]
  })
}
