/** A language as documents speak it: its words, and the records' own texts in it. */

import { type QuantityName, quantities } from '../../quantities.ts'
import type { PaperLanguage } from '../../records/schemas/common.ts'
import type { Figure } from '../text-types.ts'
import type { Catalogue } from './catalogue.ts'
import { catalogues } from './index.ts'
import { isOfProduct, type QuantityWords } from './quantity-words.ts'

export interface Tongue extends Catalogue {
  readonly language: PaperLanguage
  /** A text that a record has, as it stands or as it was translated. */
  readonly own: (text: string) => string
  /** Told of whatever the language has no words for. */
  readonly lacks: (lack: Lack) => void
}

/** A text of a record that nobody translated, or a statement or edition of statements without one. */
export interface Lack {
  readonly is: 'text' | 'statement' | 'edition'
  readonly text: string
}

/** Records' texts stand in documents as they are written. */
export const english: Tongue = {
  ...catalogues.en,
  language: 'en',
  own: text => text,
  lacks: () => undefined
}

/** A quantity's words; those of the process are English alone. */
export const wordsOf = ({ quantities: words }: Tongue, name: QuantityName): QuantityWords =>
  isOfProduct(name) ? words[name] : quantities[name]

/** A figure as readers of the language see it: what it is exactly stays as it is. */
export const spoken = ({ numbers }: Tongue, { exact, printed }: Figure): Figure => ({
  exact,
  printed: numbers.number(printed)
})
