/** Quantities of products as customers read of them, in every language. */

import { type ProductName, quantities, type QuantityName } from '../../quantities.ts'

export type { ProductName }

export interface QuantityWords {
  readonly title: string
  /** What the figure means, for a reader who meets it first. */
  readonly meaning: string
}

export const isOfProduct = (name: QuantityName): name is ProductName =>
  quantities[name].side === 'product'
