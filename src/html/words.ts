/** The words templates set around what documents say, in the site's language. */

import { catalogues } from '../documents/languages/index.ts'
import type { SiteDocument } from '../documents/types.ts'

/** What templates call `words`. */
export const wordsFor = ({ language }: Pick<SiteDocument, 'language'>) => catalogues[language].pages
