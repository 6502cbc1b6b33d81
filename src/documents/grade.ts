/** A grade's page: its datasheet, and the lots made to it. */

import { type DatasheetInputs, datasheetOf } from './datasheet.ts'
import type { Datasheet, GradeDocument } from './grade-types.ts'
import { english } from './languages/tongue.ts'
import { gradeUrl } from './lot.ts'
import type { LotSummary, Paper } from './types.ts'
import { hasWatchPage, type WatchInputs, watchUrl } from './watch.ts'

/** A file for each language; the English one without its name. */
export const datasheetUrl = (grade: string, { language } = english): string =>
  `${gradeUrl(grade)}${grade}-datasheet${language === 'en' ? '' : `-${language}`}.pdf`

/** Build the page of a grade; the pages of its lots and of their figures are those of the edition. */
export function gradeDocument(
  inputs: DatasheetInputs,
  watch: WatchInputs,
  lots: readonly LotSummary[]
): GradeDocument {
  const { id } = inputs.grade
  return {
    ...datasheetOf(inputs),
    url: gradeUrl(id),
    datasheetUrl: datasheetUrl(id, inputs.tongue),
    ...(hasWatchPage(watch) ? { watchUrl: watchUrl(id) } : {}),
    lots
  }
}

/** The datasheet alone: what its file is drawn from. */
export function datasheetIn(page: GradeDocument): Datasheet {
  const { url: _url, datasheetUrl: _file, watchUrl: _watch, lots: _lots, ...sheet } = page
  return sheet
}

/** A lot's link to the datasheet of its grade. */
export const datasheetLink = (grade: string, tongue = english): Paper => ({
  title: tongue.register.papers.datasheet(grade),
  url: datasheetUrl(grade, tongue),
  mediaType: 'application/pdf'
})
