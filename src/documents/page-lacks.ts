/**
 * What the languages of the public pages lack: texts of records that nobody translated.
 *
 * Printing figures is most of what a page costs, and what a language may lack of them are few texts: those
 * are asked for while a lot has its figures at hand. All else is worded as ever, of lots without figures.
 */

import type { JudgedLot, JudgedRow } from '../judge/types.ts'
import type { PaperLanguage } from '../records/schemas/common.ts'
import type { Content } from '../records/types.ts'
import { tongueFor } from './languages/records.ts'
import type { Lack, Tongue } from './languages/tongue.ts'
import { resultsOf } from './lot-view.ts'
import { askRow } from './result-row.ts'
import { siteDocument } from './site.ts'
import { isAsRecorded, siteLanguages } from './site-forms.ts'
import { isPublic, lotName, sectionsOf, type SiteInputs } from './site-inputs.ts'
import { traceabilityOf } from './traceability.ts'
import { askWorking } from './working.ts'

export interface PageLacks {
  /** To be shown every lot that is judged, with its figures at hand. */
  readonly see: (lot: JudgedLot) => void
  /** What the pages of a language lack, each text once; of a site whose lots were all seen. */
  readonly on: (inputs: SiteInputs, language: PaperLanguage) => Lack[]
}

/** @param asOf day the pages are of */
export function openPageLacks(content: Content, asOf: string): PageLacks {
  const languages = new Map(
    siteLanguages(content, 'public')
      .filter(language => !isAsRecorded(content, language))
      .map(language => [language, askedIn(content, language)])
  )
  const withoutRows = new Set<string>()
  return {
    see: lot => {
      if (languages.size === 0 || !isPublic(lot, asOf)) return
      if (lot.rows.length === 0) withoutRows.add(lotName(lot))
      for (const { tongue } of languages.values()) askFigures(content, lot, tongue)
    },
    on: (inputs, language) => {
      const asked = languages.get(language)
      if (!asked) return []
      const lots = inputs.lots.map(lot =>
        withoutFigures(lot, withoutRows.has(lotName(lot)) ? [] : [notMeasured])
      )
      wordBesideFigures({ ...inputs, lots }, asked.tongue)
      return [...asked.lacking.values()]
    }
  }
}

/** A language, and what it was found to lack. */
function askedIn(content: Content, language: PaperLanguage) {
  const lacking = new Map<string, Lack>()
  return { lacking, tongue: tongueFor(content, language, lack => lacking.set(lack.text, lack)) }
}

/** Ask for all that a lot's page says beside its figures because of them. */
function askFigures(content: Content, { rows, grade }: JudgedLot, tongue: Tongue): void {
  const sections = sectionsOf(grade, 'public')
  const results = resultsOf(rows)
  traceabilityOf(content, results, tongue)
  for (const result of results) {
    if (sections.has('results')) askRow(result, tongue)
    if (sections.has('working')) askWorking(result, tongue)
  }
}

/** Word a site whose lots have no figures. What is drawn of series has no text of a record in it. */
function wordBesideFigures(inputs: SiteInputs, tongue: Tongue): void {
  // A preview of a certificate says no more texts of records than its lot's page.
  const quick = { series: [], edition: 'public', previewIn: 'none' } as const
  const site = siteDocument({ ...inputs, ...quick, tongue })
  // Pages are worded when they are read.
  for (const _page of site.lots) continue
}

/** Stands for all rows: where there are none, a page keeps reasons to itself that name figures. */
const notMeasured: JudgedRow = { quantity: 'moisture_percent', scope: 'lot mean' }

/** No spread of the lot: its own rows are judged when they are read. */
const withoutFigures = (
  { evaluated, grade, rule, asOf, word, state, decision, hazards }: JudgedLot,
  rows: readonly JudgedRow[]
): JudgedLot => ({
  evaluated,
  grade,
  rule,
  asOf,
  rows,
  word,
  state,
  ...(decision ? { decision } : {}),
  ...(hazards ? { hazards } : {})
})
