/**
 * How much of a lot was made, whatever was taken of it since: of foil what is saleable, in sheets where
 * all of them are recorded.
 */

import { Decimal } from 'decimal.js'
import { placesOf, roundToPlaces } from '../metrology/rounding.ts'
import type { Batch, Foil } from '../records/types.ts'
import type { Tongue } from './languages/tongue.ts'
import { unparted } from './words.ts'

export interface QuantityMade {
  /** '148.30 g', as it was weighed. */
  readonly mass: string
  readonly sheets?: number
}

export const flakeMade = ({ product }: Batch): QuantityMade => ({ mass: product.mass_g.written })

export function foilMade({ saleable_g, sheets = [] }: Foil): QuantityMade | undefined {
  const masses = sheets.map(({ mass_g }) => mass_g.decimal)
  const sum = masses.reduce((total, mass) => total.plus(mass), new Decimal(0))
  if (!saleable_g) {
    if (sheets.length === 0) return undefined
    const places = Math.min(...masses.map(placesOf))
    return { mass: `${roundToPlaces(sum, places)} g`, sheets: sheets.length }
  }
  // Half a sheet more or less than those recorded: some are not recorded, or not for sale.
  const half = Decimal.min(...masses, saleable_g.decimal).div(2)
  const isWhole = sum.minus(saleable_g.decimal).abs().lt(half)
  return { mass: saleable_g.written, ...(isWhole ? { sheets: sheets.length } : {}) }
}

export function quantityText(
  { mass, sheets }: QuantityMade,
  { foil, numbers }: Pick<Tongue, 'foil' | 'numbers'>
): string {
  const weighed = numbers.number(mass)
  return unparted(sheets === undefined ? weighed : foil.sheets(sheets, weighed))
}
