/** Numbers to figures: rounded here and nowhere else. */

import { Decimal } from 'decimal.js'
import {
  type Computable,
  exactText,
  placesFor,
  roundResult,
  roundToPlaces,
  toDecimal
} from '../metrology/rounding.ts'
import { units } from '../metrology/units.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import type { Figure, UnitText } from './types.ts'
import { withMinus } from './words.ts'

/** A computed number and the text a reader sees for it. */
export const figure = (value: Computable, printed: string): Figure => ({
  exact: exactText(value),
  printed: withMinus(printed)
})

/** A limit or other number known by its written digits. */
export const writtenFigure = (decimal: string): Figure => ({
  exact: new Decimal(decimal).toFixed(),
  printed: withMinus(decimal)
})

/** A number to so many significant digits. */
export function significant(value: number, digits: number): Figure {
  const decimal = toDecimal(value)
  return figure(decimal, roundToPlaces(decimal, placesFor(decimal, digits)))
}

/** A value with its expanded uncertainty, both at the place of U's second digit. */
export function resultFigures(
  value: number,
  U: number,
  more = 0
): { value: Figure; expandedUncertainty: Figure } {
  if (U === 0)
    return {
      value: significant(value, 6 + more),
      expandedUncertainty: { exact: '0', printed: '0' }
    }
  const [exactValue, exactU] = [toDecimal(value), toDecimal(U)]
  const rounded = roundResult(exactValue, exactU, more)
  return {
    value: figure(exactValue, rounded.value),
    expandedUncertainty: figure(exactU, rounded.U)
  }
}

/** A reporting limit to so many significant digits, rounded up so that '< 0.021' stays true. */
export function reportingLimitText(below: number, digits = 2): string {
  const places = Math.max(0, placesFor(below, digits))
  return toDecimal(below).toDecimalPlaces(places, Decimal.ROUND_UP).toFixed(places)
}

/** Degrees of freedom as a reader sees them. */
export const freedomFigure = (df: number): Figure =>
  Number.isFinite(df)
    ? { exact: String(Math.floor(df)), printed: String(Math.floor(df)) }
    : { exact: 'unlimited', printed: 'unlimited' }

/** A probability as a percentage that never claims certainty. */
export function probabilityFigure(probability: number): Figure {
  const exact = exactText(100 * probability)
  if (probability > 0.999) return { exact, printed: '> 99.9' }
  if (probability < 0.001) return { exact, printed: '< 0.1' }
  return { exact, printed: roundToPlaces(toDecimal(100 * probability), 1) }
}

/** The unit of a quantity as documents show it. */
export function unitText(quantity: QuantityName): UnitText {
  const { unit } = quantities[quantity]
  const ucum = quantity === 'slurryPH' ? '[pH]' : units[unit].ucum
  return { printed: unit === '1' ? '' : unit, ucum }
}

/** A number and its unit, for a reader. */
export const withUnit = (text: string, unit: string): string => (unit ? `${text} ${unit}` : text)
