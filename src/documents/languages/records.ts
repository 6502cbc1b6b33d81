/** The language of a certificate with its records' texts in it, and what they lack. */

import type { PaperLanguage } from '../../records/schemas/common.ts'
import type { CertificateOrder, Content } from '../../records/types.ts'
import { catalogues } from './index.ts'
import type { Lack, Tongue } from './tongue.ts'

/** English where nothing is said. */
export const languageOf = ({ language }: Pick<CertificateOrder, 'language'>): PaperLanguage =>
  language ?? 'en'

type Written = Pick<Content, 'producer' | 'translations'>

/** Language the records are written in. */
export const homeLanguage = ({ producer }: Written): PaperLanguage =>
  producer.record.writtenIn ?? 'en'

/**
 * A language for a workshop's papers.
 *
 * @param lacks told of each text that nobody has translated; a paper is made only where there is none
 */
export function tongueFor(
  content: Written,
  language: PaperLanguage,
  lacks: (lack: Lack) => void = () => undefined
): Tongue {
  const texts = content.translations.get(language)?.record.texts ?? []
  const translated = new Map(texts.map(({ text, as }) => [text, as]))
  const own = (text: string): string => {
    const as = translated.get(text)
    if (as === undefined) lacks({ is: 'text', text })
    return as ?? text
  }
  return {
    ...catalogues[language],
    language,
    own: language === homeLanguage(content) ? text => text : own,
    lacks
  }
}
