/** The words templates set around what documents say, in the site's language. */

import { catalogues } from '../documents/languages/index.ts'
import type { SiteDocument } from '../documents/types.ts'

/** As data in a page: no '<' is left that could end it. */
const dataText = (value: object): string => JSON.stringify(value).replaceAll('<', '\\u003c')

/** What templates call `words`; what scripts say, where that is not the English they bring along. */
export function wordsFor({ language }: Pick<SiteDocument, 'language'>) {
  const { pages, scripts, checks, checkPage } = catalogues[language]
  const isEnglish = language === 'en'
  return {
    ...pages,
    scriptData: isEnglish ? '' : dataText(scripts),
    checkData: isEnglish ? '' : dataText({ checks, checkPage })
  }
}
