/** Entries of a file as values of a record: digits kept, units never guessed. */

import { Decimal } from 'decimal.js'
import { unitNamed, units, type UnitName } from '../metrology/units.ts'
import { acceptedUnits, isUnreadable, readQuantity, type Reading } from '../metrology/written.ts'
import { type Problem, quoted } from '../problem.ts'
import { quantities, type QuantityKey, quantityOf } from '../quantities.ts'
import { valueFault } from '../records/field-shape.ts'
import type { Kind } from '../records/kinds.ts'
import type { DateForm } from '../records/schemas/mapping.ts'
import { type NumberStyle, numberAndUnit, plainDigits } from '../tables/numbers.ts'
import { type Cell, cellProblem, type Sheet } from '../tables/sheet.ts'
import type { FileColumn, MappedColumn } from './columns.ts'
import type { Destination } from './target.ts'

/** A column that fills a field. */
export interface Filling {
  readonly mapped: MappedColumn
  readonly column: FileColumn
  readonly to: Destination
}

export interface Value {
  readonly text: string
  readonly cell: Cell
  /** Of a quantity, for finding the largest. */
  readonly number?: Decimal
}

/** What entries are read by. */
export interface Reader {
  readonly sheet: Sheet
  readonly kind: Kind
  readonly style: NumberStyle
}

/** Code, message and hint of a problem. */
export type Said = readonly [Problem['code'], string, string]

/** The value of an entry with something in it, or why it is none. */
export function readValue(reader: Reader, filling: Filling, cell: Cell): Value | Problem {
  const { column, to, mapped } = filling
  const result = cell.isComputed ? computed(cell) : textFor(reader, filling, cell)
  const refuse = ([code, message, hint]: Said) =>
    cellProblem(reader.sheet, cell, [column.name], code, [message, hint])
  if (typeof result !== 'object') return refuse(['INVALID_VALUE', 'cannot be read', 'check it'])
  if (!('text' in result)) return refuse(result)
  const path = to.shape.is === 'list' && !to.within ? [...to.path, 0] : to.path
  const fault = valueFault(reader.kind, path, result.text)
  if (!fault) return { ...result, cell }
  const wanted = mapped.date === undefined && fault.code === 'BAD_DATE'
  return refuse([
    fault.code,
    fault.message,
    wanted ? "write 'date: day-month-year' or another order beside the column" : fault.hint
  ])
}

const computed = ({ text }: Cell): Said => [
  'COMPUTED_VALUE',
  `a formula gives ${quoted(text)}, which nobody read`,
  'take the readings over and leave out what was worked out; or keep the values in its place'
]

type Taken = { readonly text: string; readonly number?: Decimal }

function textFor(reader: Reader, { mapped, column, to }: Filling, cell: Cell): Taken | Said {
  if (/^[=@]/u.test(cell.text)) return computed(cell)
  const word = mapped.words?.[cell.text]
  if (word !== undefined) return { text: word }
  if (mapped.words && to.shape.unit === undefined)
    return [
      'UNKNOWN_WORD',
      `${quoted(cell.text)} is none of the words of the mapping: ${Object.keys(mapped.words).join(', ')}`,
      "add it under 'words:'"
    ]
  if (mapped.date) return dateText(cell.text, mapped.date)
  if (to.shape.unit !== undefined) return quantityText(reader, mapped, column, to.shape.unit, cell)
  const unit = mapped.unit ?? column.unit
  return { text: unit === undefined ? cell.text : `${cell.text} ${unit}` }
}

function quantityText(
  { style }: Reader,
  mapped: MappedColumn,
  column: FileColumn,
  wanted: UnitName,
  cell: Cell
): Taken | Said {
  const parts = numberAndUnit(cell.text)
  if (!parts)
    return ['NOT_A_QUANTITY', `must be a number, got ${quoted(cell.text)}`, skipHint(column)]
  const digits = cell.isNumber
    ? spreadsheetDigits(cell, mapped.places)
    : digitsOf(parts.number, style)
  if (!('digits' in digits)) return digits
  const unit = unitOf([parts.unit, mapped.unit, column.unit], wanted)
  if (typeof unit !== 'string') return unit
  const number = new Decimal(digits.digits)
  return {
    text: unit === '1' ? digits.digits : `${digits.digits} ${unit}`,
    number: unit === '1' ? number : number.times(units[unit].factor)
  }
}

/** A figure that an old list gives itself. */
export interface ListedFigure {
  readonly key: QuantityKey
  /** In the unit of the quantity, its digits as listed. */
  readonly reading: Reading
}

/**
 * A figure of a list to hold ours against, worked out or not; of more decimals than a spreadsheet
 * shows, those of the mapping.
 */
export function readFigure(reader: Reader, filling: FigureColumn, cell: Cell): ListedFigure | Said {
  const { key, mapped, column } = filling
  const { unit } = quantities[quantityOf(key)!]
  const { places } = mapped
  const isLong = cell.isNumber && places !== undefined
  const rounded = isLong ? { ...cell, text: new Decimal(cell.text).toFixed(places) } : cell
  const taken = quantityText(reader, mapped, column, unit, rounded)
  if (!('text' in taken)) return taken
  const reading = readQuantity(taken.text, unit)
  return isUnreadable(reading)
    ? ['NOT_A_QUANTITY', `must be a quantity in ${unit}, got ${quoted(cell.text)}`, 'check it']
    : { key, reading }
}

export interface FigureColumn {
  readonly key: QuantityKey
  readonly mapped: MappedColumn
  readonly column: FileColumn
}

const skipHint = ({ name }: FileColumn) =>
  `where such lines hold no reading, write 'skip: { ${name}: [word] }' in the mapping`

function digitsOf(number: string, style: NumberStyle): { digits: string } | Said {
  const read = plainDigits(number, style)
  if ('digits' in read) return read
  if (read.fault === 'no number')
    return ['NOT_A_QUANTITY', `must be a number, got ${quoted(number)}`, 'check the digits']
  if (read.fault === 'other mark')
    return [
      'AMBIGUOUS_NUMBER',
      `${quoted(number)} has another decimal mark than the ${style.decimal} of this file`,
      "write 'thousands:' in the mapping if it parts thousands; or mend the file where it is made"
    ]
  return [
    'AMBIGUOUS_NUMBER',
    `${quoted(number)} can be read two ways: nothing says whether its mark parts decimals or thousands`,
    "write 'decimal: point' or 'decimal: comma', and 'thousands:', under 'file:' in the mapping"
  ]
}

/** A spreadsheet keeps no trailing zeros: how many decimals were shown must be known. */
function spreadsheetDigits({ text, isBare }: Cell, places?: number): { digits: string } | Said {
  if (places === undefined)
    return isBare
      ? [
          'AMBIGUOUS_NUMBER',
          `the spreadsheet keeps ${text} without the decimals that the instrument showed`,
          "write 'places: 3', or as many as it shows, beside the column; or export as CSV"
        ]
      : { digits: text }
  const value = new Decimal(text)
  const shown = value.toFixed(places)
  if (new Decimal(shown).minus(value).abs().lessThanOrEqualTo(value.abs().plus(1).times('1e-12')))
    return { digits: shown }
  return [
    'INVALID_VALUE',
    `${text} has more decimals than the ${places} of the mapping`,
    "check 'places:', or whether the value was worked out"
  ]
}

/** The one unit said in entry, mapping or heading: all that say one must agree. */
function unitOf(said: readonly (string | undefined)[], wanted: UnitName): UnitName | Said {
  const texts = said.filter(text => text !== undefined && text !== '') as string[]
  const named = texts.map(text => ({ text, unit: unitNamed(text) }))
  const unknown = named.find(({ unit }) => unit === undefined)
  if (unknown)
    return [
      'UNKNOWN_UNIT',
      `${quoted(unknown.text)} is not a unit known here`,
      `units for this field: ${acceptedUnits(wanted)}`
    ]
  const [first, ...others] = named.map(({ unit }) => unit!)
  if (first === undefined)
    return wanted === '1'
      ? '1'
      : [
          'MISSING_UNIT',
          'neither entry, heading nor mapping says its unit',
          `write 'unit: ${wanted}', or the true one, beside the column in the mapping`
        ]
  const other = others.find(unit => unit !== first)
  if (other !== undefined)
    return [
      'WRONG_DIMENSION',
      `is in ${first} by one and in ${other} by another of entry, mapping and heading`,
      'write the true unit in the mapping and mend the file'
    ]
  return first
}

/** A day written in an order the mapping states: 3.4.2026 → 2026-04-03. */
function dateText(text: string, form: DateForm): Taken | Said {
  const parts =
    /^(\d{1,4})\s*[./-]\s*(\d{1,2})\s*[./-]\s*(\d{1,4})(?:[T\s]+\d{1,2}:\d\d.*)?$/u.exec(text)
  const names = form.split('-')
  const part = (name: string) => parts?.[names.indexOf(name) + 1] ?? ''
  if (part('year').length !== 4)
    return [
      'BAD_DATE',
      `must be a day as ${form}, with four digits of the year, got ${quoted(text)}`,
      "write the true order as 'date:' beside the column"
    ]
  return {
    text: [part('year'), part('month').padStart(2, '0'), part('day').padStart(2, '0')].join('-')
  }
}
