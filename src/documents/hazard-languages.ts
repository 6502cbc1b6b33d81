/** Hazard statements in other languages, as CLP prints them. */

import type { LabelElements } from '../hazards/label-elements.ts'
import { statementText } from '../hazards/statements.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { Grade } from '../records/types.ts'
import { labelWords } from './label-words/index.ts'
import type { HazardLanguage } from './hazard-types.ts'

type Hazards = NonNullable<Grade['hazards']>
export type OtherLanguage = HazardLanguage['language']

const names: Readonly<Record<OtherLanguage, string>> = {
  en: 'English',
  de: 'Deutsch',
  fr: 'Français',
  es: 'Español',
  it: 'Italiano'
}

/** The words for a statement's gap in a language: those in English are for English alone. */
export const fillFor = (
  { fillInLanguages, fill }: Hazards,
  code: string,
  language: OtherLanguage
): string | undefined => {
  const fills = language === 'en' ? fill : fillInLanguages?.[language]
  return fills && Object.hasOwn(fills, code) ? fills[code] : undefined
}

/** One block a language asked for beside the page's own, in the order asked; English is asked for always. */
export const languageBlocks = (
  hazards: Hazards,
  {
    signal,
    statements,
    precautions
  }: Pick<LabelElements, 'signal' | 'statements'> & { precautions: readonly string[] },
  page: PaperLanguage
): HazardLanguage[] =>
  (['en', ...(hazards.languages ?? [])] as const)
    .filter(language => language !== page)
    .map(language => ({
      language,
      name: names[language],
      ...(signal === undefined ? {} : { signal: labelWords[language].signals[signal] }),
      statements: [...statements.map(({ code }) => code), ...precautions].flatMap(code => {
        const statement = statementText(code, language, fillFor(hazards, code, language))
        return statement.ok ? [{ code, text: statement.text }] : []
      })
    }))
