/** What is said of every quantity, whatever it is. */

import type { UnitName } from '../metrology/units.ts'

export interface Quantity {
  /** Key in records, limits and addresses. */
  readonly key: string
  readonly title: string
  readonly unit: UnitName
  /** Lowest and highest plausible value, in `unit`. */
  readonly band: readonly [number, number]
  /** Product figures may be public; process figures exist only in the workshop edition. */
  readonly side: 'product' | 'process'
  /** What the figure means, for a reader who meets it first. */
  readonly meaning: string
  /** Test block it is read in, where one test gives several quantities; else its own key. */
  readonly test?: string
  /** What a figure reported from elsewhere has to say beside it: without this it tells nothing. */
  readonly conditions?: string
}
