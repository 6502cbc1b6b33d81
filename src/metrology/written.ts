/**
 * Quantities as a record writes them: `25.00 g`, `950 °C`, `3.42`.
 *
 * The written digits are evidence (`99.0` is not `99`), so they are kept beside the value.
 */

import { Decimal } from 'decimal.js'
import { type Unit, type UnitName, unitNamed, units, unitsOf } from './units.ts'

/** A quantity read from a record, in the unit named by the field that holds it. */
export interface Reading {
  readonly value: number
  /** One step of the last written digit, in the same unit. */
  readonly resolution: number
  /** The value as an exact decimal in the field's unit, written digits kept: '25.00'. */
  readonly decimal: string
  /** As written in the record, unit included: '25.00 g'. */
  readonly written: string
}

export type WrittenFault =
  | 'not a quantity'
  | 'comma decimal'
  | 'no unit'
  | 'unknown unit'
  | 'wrong dimension'
  | 'out of range'
  | 'too fine'

export interface Unreadable {
  readonly fault: WrittenFault
  /** The part of the text at fault. */
  readonly part: string
}

const PATTERN = /^([+\-−]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*(\S.*)?$/u
const COMMA = /^[+\-−]?\d+,\d+(\s|$|[^\d,])/u

/** Digits that need no decimal arithmetic to read: most readings of any record. */
const PLAIN = /^-?(0|[1-9]\d{0,8})(\.\d{1,9})?$/u

/** Powers of ten a plain reading's last digit can stand at; a table, as `**` is not exact. */
const STEPS = [1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9]

/** Magnitudes no bench instrument shows; beyond them a record holds a slip of the hand. */
const LARGEST = 1e12
/** Amounts no bench instrument shows, and last digits none resolves. */
const SMALLEST = 1e-12
const FINEST = 1e-15

/**
 * Read `text` as a quantity in `unit`, converting exactly from another unit of the same dimension.
 *
 * @returns the reading in `unit`, or what keeps the text from being one
 */
export function readQuantity(text: string, unit: UnitName): Reading | Unreadable {
  const trimmed = text.trim()
  if (COMMA.test(trimmed)) return { fault: 'comma decimal', part: trimmed }
  const match = PATTERN.exec(trimmed)
  if (!match) return { fault: 'not a quantity', part: trimmed }
  const digits = match[1]!.replace('−', '-')
  const unitText = match[2] ?? ''
  const written = unitOfText(unitText, unit)
  if (typeof written !== 'string') return written
  // A no-break space means what a space means, and copies compare as written.
  const shown = trimmed.replace(/\s/gu, ' ')
  if (written === unit && PLAIN.test(digits)) return plainReading(digits, shown)
  const decimal = convert(digits, units[written], units[unit])
  const value = decimal.toNumber()
  if (Math.abs(value) > LARGEST) return { fault: 'out of range', part: digits }
  const step = lastDigit(digits).times(units[written].factor).div(units[unit].factor)
  const small = !decimal.isZero() && decimal.abs().lessThan(SMALLEST)
  if (small || step.lessThan(FINEST)) return { fault: 'too fine', part: digits }
  return {
    value,
    resolution: step.toNumber(),
    // A scale with another zero adds digits of its own: 25 °C is 298.15 K.
    decimal: decimal.toFixed(Math.max(step.decimalPlaces(), decimal.decimalPlaces())),
    written: shown
  }
}

/** A reading in the field's own unit: its digits are its decimal. */
function plainReading(digits: string, written: string): Reading {
  const point = digits.indexOf('.')
  const places = point < 0 ? 0 : digits.length - point - 1
  return { value: Number(digits), resolution: STEPS[places]!, decimal: digits, written }
}

export const isUnreadable = (result: object): result is Unreadable => 'fault' in result

/** A quantity whose unit is part of what it says: an instrument's resolution, a tolerance. */
export interface AnyQuantity {
  readonly digits: string
  readonly unit: UnitName
  /** As written, unit included. */
  readonly written: string
}

/** Read `text` as a quantity in any unit of the table. */
export function readAnyQuantity(text: string): AnyQuantity | Unreadable {
  const unitText = PATTERN.exec(text.trim())?.[2] ?? ''
  const unit = unitNamed(unitText) ?? '1'
  const reading = readQuantity(text, unit)
  return isUnreadable(reading)
    ? reading
    : {
        digits: text
          .trim()
          .slice(0, text.trim().length - unitText.length)
          .trim(),
        unit,
        written: reading.written
      }
}

/** A quantity in another unit of its dimension; undefined where the dimensions differ. */
export function inUnit({ digits, unit }: AnyQuantity, wanted: UnitName): Reading | undefined {
  if (units[unit].dimension !== units[wanted].dimension) return undefined
  const reading = readQuantity(unit === '1' ? digits : `${digits} ${unit}`, wanted)
  return isUnreadable(reading) ? undefined : reading
}

/** Units a field of `unit` accepts, as a sentence part: 'g, kg or mg'. */
export function acceptedUnits(unit: UnitName): string {
  const names = unitsOf(units[unit].dimension)
  const [first, ...rest] = [unit, ...names.filter(name => name !== unit)]
  return rest.length === 0
    ? first!
    : `${[first, ...rest.slice(0, -1)].join(', ')} or ${rest.at(-1)}`
}

function unitOfText(text: string, wanted: UnitName): UnitName | Unreadable {
  if (text === '') return wanted === '1' ? '1' : { fault: 'no unit', part: text }
  const unit = unitNamed(text)
  if (unit === undefined || unit === '1') return { fault: 'unknown unit', part: text }
  if (units[unit].dimension !== units[wanted].dimension)
    return { fault: 'wrong dimension', part: text }
  return unit
}

function convert(digits: string, from: Unit, to: Unit): Decimal {
  return new Decimal(digits)
    .times(from.factor)
    .plus(from.offset ?? '0')
    .minus(to.offset ?? '0')
    .div(to.factor)
}

/** The place of the last written digit: '25.00' → 0.01, '1.2e3' → 100. */
function lastDigit(digits: string): Decimal {
  const [mantissa, exponent = '0'] = digits.toLowerCase().split('e')
  const decimals = mantissa!.split('.')[1]?.length ?? 0
  return new Decimal(`1e${Number(exponent) - decimals}`)
}
