/** What the languages of the public pages lack: told before anything is built, so that no page mixes two. */

import type { FieldPath, Problem } from '../problem.ts'
import { problemAt } from '../problem.ts'
import { lackText } from './check-languages.ts'
import type { PageLacks } from './page-lacks.ts'
import { siteLanguages } from './site-forms.ts'
import type { SiteInputs } from './site-inputs.ts'

/** Every text that a page needs in its language and that nobody has written, each told once. */
export function checkPages(lacks: PageLacks, inputs: SiteInputs): Problem[] {
  const { content } = inputs.evaluated
  const entry = content.producer
  return siteLanguages(content, 'public').flatMap((language, index) => {
    const field: FieldPath = entry.record.siteLanguages ? ['siteLanguages', index] : ['writtenIn']
    return lacks.on(inputs, language).map(lack => {
      const { language: name, lacks, hint } = lackText(lack, language)
      return problemAt(
        entry.at(field),
        'MISSING_TEXT',
        `the pages are in ${name}, and ${lacks}`,
        hint
      )
    })
  })
}
