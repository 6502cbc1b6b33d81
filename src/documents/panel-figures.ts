/** Figures of panels in tables: a mean with scatter, a value with U. */

import type { GroupFigure } from '../evaluate/panel-groups.ts'
import { expand } from '../metrology/coverage.ts'
import type { Estimate } from '../metrology/estimate.ts'
import { placesFor, roundToPlaces, toDecimal } from '../metrology/rounding.ts'
import { resultFigures } from './figure.ts'
import { withMinus } from './words.ts'

/** '11.2 (s 0.6)' at the place of the second digit of s, or of U for a single panel. */
export function meanText(figure: GroupFigure | undefined): string {
  if (!figure) return ''
  const { mean, s } = figure
  if (s === undefined || s === 0) return withU(mean)
  const places = placesFor(s, 2)
  const rounded = (value: number) => withMinus(roundToPlaces(toDecimal(value), places))
  return `${rounded(mean.value)} (s ${rounded(s)})`
}

export function withU(estimate: Estimate): string {
  const { value, expandedUncertainty } = resultFigures(estimate.value, expand(estimate).U)
  return `${value.printed} ± ${expandedUncertainty.printed}`
}
