/**
 * Rounding in decimal, once, from the unrounded value. Ties go to the even digit.
 *
 * Sources: ISO 80000-1:2022 annex B, rule A (clause from memory, not checked against the print);
 * ASTM E29-22 section 6, rounding method; JCGM 100:2008, 7.2.6.
 */

import { Decimal } from 'decimal.js'

/** Digits a computed number is held to where it leaves the program: floats agree to these. */
export const SIGNIFICANT_DIGITS = 12

/** A computed number: a float, or the decimal that was made of it before. */
export type Computable = number | Decimal

/** A float as the decimal of 12 significant digits that stands for it everywhere. */
export function toDecimal(value: Computable): Decimal {
  if (value instanceof Decimal) return value
  const decimal = new Decimal(value)
  // Most figures have fewer digits, and rounding a decimal costs more than counting its digits.
  return decimal.precision() <= SIGNIFICANT_DIGITS
    ? decimal
    : decimal.toSignificantDigits(SIGNIFICANT_DIGITS, Decimal.ROUND_HALF_EVEN)
}

/** Plain decimal notation of a 12-digit decimal, without an exponent or trailing zeros. */
export const exactText = (value: Computable): string => toDecimal(value).toFixed()

/**
 * Round to a decimal place, ties to even.
 *
 * @param places digits after the point; negative for tens, hundreds
 * @returns the rounded number with exactly the digits that carry meaning: '36000', '12.20'
 */
export function roundToPlaces(value: Decimal.Value, places: number): string {
  const decimal = new Decimal(value)
  const rounded =
    places < 0
      ? decimal.toNearest(`1e${-places}`, Decimal.ROUND_HALF_EVEN)
      : decimal.toDecimalPlaces(places, Decimal.ROUND_HALF_EVEN)
  // decimal.js writes no sign before a zero.
  return rounded.toFixed(Math.max(0, places))
}

/** Decimal places at which `value` shows `digits` significant digits: (0.0123, 2) → 3. */
export function placesFor(value: Computable, digits: number): number {
  const decimal = toDecimal(value)
  if (decimal.isZero()) return 0
  return digits - 1 - decimal.toSignificantDigits(digits, Decimal.ROUND_HALF_EVEN).e
}

/** Places of the last written digit of a decimal: '0.50' → 2, '36000' → 0. */
export const placesOf = (written: string): number => written.split('.')[1]?.length ?? 0

export interface RoundedResult {
  readonly value: string
  readonly U: string
  readonly places: number
}

/**
 * A value and its uncertainty as reported: U to two significant digits, the value to the same
 * place. Rounding to the nearest lowers U by less than 5 %.
 *
 * @param more further places, where a printed figure would otherwise contradict its verdict
 */
export function roundResult(value: Computable, U: Computable, more = 0): RoundedResult {
  const places = placesFor(U, 2) + more
  return {
    value: roundToPlaces(toDecimal(value), places),
    U: roundToPlaces(toDecimal(U), places),
    places
  }
}
