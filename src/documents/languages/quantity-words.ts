/** Quantities of products as customers read of them, in every language. */

import { quantities, type QuantityName } from '../../quantities.ts'

/** Quantities of the process stand on no paper. */
export type ProductName = {
  [Name in QuantityName]: (typeof quantities)[Name]['side'] extends 'product' ? Name : never
}[QuantityName]

export interface QuantityWords {
  readonly title: string
  /** What the figure means, for a reader who meets it first. */
  readonly meaning: string
}

export const isOfProduct = (name: QuantityName): name is ProductName =>
  quantities[name].side === 'product'
