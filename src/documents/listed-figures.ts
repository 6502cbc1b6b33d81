/** Figures of an old list beside those that its readings give here. */

import type { EvaluatedContent } from '../evaluate/types.ts'
import { roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import type { Reading } from '../metrology/written.ts'
import { inSentence, quantities, type QuantityKey, quantityOf } from '../quantities.ts'

export interface ListedLot {
  readonly lot: string
  readonly line: number
  readonly figures: readonly { readonly key: QuantityKey; readonly reading: Reading }[]
}

/** Last digits of the list by which two figures may differ: it rounded, perhaps more than once. */
const LAST_DIGITS = 1

/**
 * Every figure of the list that ours differs from or that has none beside it, a line of text each, and
 * how many agree; nothing where the list gives none.
 */
export function listedText(lots: readonly ListedLot[], { lots: ours }: EvaluatedContent): string {
  const told = lots.flatMap(({ lot, line, figures }) =>
    figures.map(({ key, reading }) => {
      const name = quantityOf(key)!
      const { title, unit } = quantities[name]
      const evaluated = ours.get(lot)
      const found = (evaluated?.product[name] ?? evaluated?.process[name])?.estimate.value
      const what = `line ${line}, ${lot}: ${inSentence(title)} is ${shown(reading.decimal, unit)} in the list`
      if (found === undefined) return `${what}, and has no readings here to be worked out from`
      const off = Math.abs(found - reading.value) / reading.resolution
      return off <= LAST_DIGITS * (1 + 1e-9)
        ? undefined
        : `${what}, ${shown(alike(found, reading), unit)} by its readings`
    })
  )
  if (told.length === 0) return ''
  const differing = told.filter(one => one !== undefined)
  const agree = told.length - differing.length
  return `Figures of the list: ${agree} of ${told.length} as worked out here, to the last digit\n${differing
    .map(one => `  ${one}\n`)
    .join('')}`
}

/** Ours with as many decimals as the list gives. */
const alike = (value: number, { resolution }: Reading): string =>
  roundToPlaces(toDecimal(value), toDecimal(resolution).decimalPlaces())

const shown = (digits: string, unit: string) => (unit === '1' ? digits : `${digits} ${unit}`)
