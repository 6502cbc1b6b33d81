/** Comparison with a figure as a source prints it: ours must round to it, in decimal, ties to even. */

import { Decimal } from 'decimal.js'
import { exactText } from '../../src/metrology/rounding.ts'

/** `value` rounded to the digits of `printed`: '0.10214' asserts nothing beyond its last digit. */
export function asPrinted(value: number, printed: string): string {
  const places = printed.split('.')[1]?.length ?? 0
  return new Decimal(exactText(value))
    .toDecimalPlaces(places, Decimal.ROUND_HALF_EVEN)
    .toFixed(places)
}
