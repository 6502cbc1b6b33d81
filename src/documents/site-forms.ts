/** The public site in each language its producer wants. */

import type { Content } from '../records/types.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import { homeLanguage, tongueFor } from './languages/records.ts'
import { siteDocument } from './site.ts'
import type { SiteInputs } from './site-inputs.ts'
import type { SiteDocument } from './types.ts'

/** Languages of an edition's pages, the first at its root. The workshop's own is in English. */
export const siteLanguages = (
  content: Pick<Content, 'producer' | 'translations'>,
  edition: SiteInputs['edition']
): readonly PaperLanguage[] =>
  edition === 'workshop'
    ? ['en']
    : (content.producer.record.siteLanguages ?? [homeLanguage(content)])

/** What each language is called in itself. */
const ownNames: Readonly<Record<PaperLanguage, string>> = { en: 'English', de: 'Deutsch' }

/** The site of an edition, with the forms its pages take. */
export function siteInLanguages(inputs: SiteInputs): SiteDocument {
  const { content } = inputs.evaluated
  const languages = siteLanguages(content, inputs.edition)
  const site = siteDocument({ ...inputs, previewIn: languages[0]! })
  const isPlain = languages.length === 1 && isAsRecorded(content, languages[0]!)
  return isPlain
    ? site
    : { ...site, forms: languages.map(language => formOf(inputs, languages, language, site)) }
}

/** English pages with the records' own texts in them as they stand. */
export const isAsRecorded = (
  content: Pick<Content, 'producer' | 'translations'>,
  language: PaperLanguage
) => language === 'en' && homeLanguage(content) === 'en'

function formOf(
  inputs: SiteInputs,
  languages: readonly PaperLanguage[],
  language: PaperLanguage,
  site: SiteDocument
): SiteDocument {
  const { content } = inputs.evaluated
  const folderOf = (one: PaperLanguage) => (one === languages[0] ? '' : `${one}/`)
  const shown = isAsRecorded(content, language)
    ? site
    : siteDocument({
        ...inputs,
        tongue: tongueFor(content, language),
        previewIn: languages[0]!
      })
  return {
    ...shown,
    folder: folderOf(language),
    others: languages
      .filter(other => other !== language)
      .map(other => ({ language: other, name: ownNames[other], folder: folderOf(other) }))
  }
}
