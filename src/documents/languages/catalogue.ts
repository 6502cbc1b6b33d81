/** What every language has words for. */

import type { en } from './en/index.ts'
import type { ProductName, QuantityWords } from './quantity-words.ts'

export type Catalogue = Omit<typeof en, 'quantities'> & {
  readonly quantities: Readonly<Record<ProductName, QuantityWords>>
}
