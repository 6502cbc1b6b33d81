/**
 * What a grade's datasheet says of hazards beyond the label: handling, what must not meet, gases,
 * limits of exposure, waste, carriage, and who decides. It is no safety data sheet and says so.
 */

import type { CautionLine } from '../hazards/cautions.ts'
import { type Clause, certaintyTexts, cited } from '../hazards/clauses.ts'
import { dustText } from '../hazards/dust.ts'
import { type ExposureLimit, limitParts } from '../hazards/exposure.ts'
import { cautionsOfProduct } from '../hazards/product-cautions.ts'
import { findSubstance } from '../hazards/substances.ts'
import { articleNotes } from './article.ts'
import type { GradeView } from './lot-view.ts'
import type { SafetyNotes } from './safety-types.ts'
import { transportText } from './transport.ts'
import { unparted } from './words.ts'

export const DISCLAIMER =
  'What is said here of hazards was made from the records and the composition entered by the producer, using the classification rules and statement texts named beside it. It is an aid, not a legal classification, safety data sheet, permit, engineering design or transport declaration. Classification, labelling, exposure control, ventilation, fire and explosion protection, waste and transport must follow the law and codes in force where the material is made, carried, used and discarded, and be decided by competent, where required licensed, persons, such as a safety adviser, a dangerous-goods safety adviser, an occupational hygienist, a professional engineer, a poison centre or the local authority. Values called computed come from calculation, not from tests; where test data exist they prevail. No warranty of completeness is given.'

const EXPOSURE_NOTE =
  'A national limit may be lower, and holds where the work is done. Threshold limit values of the ACGIH are not given here: ask for the current edition.'

/** The notes of a grade as of a day, on which an adviser's decision is good or not. */
export function safetyNotes(grade: GradeView, day: string): SafetyNotes {
  const { kind, hazards } = grade
  const { handling, incompatible, gases, exposure, disposal } = cautionsOfProduct(kind)
  const dust = dustOf(kind, hazards?.dust)
  return {
    sections: [
      { heading: 'Article', texts: articleNotes(grade, day) },
      { heading: 'Handling', texts: handling.map(lineText) },
      { heading: 'Dust', texts: dust },
      { heading: 'Never together with', texts: incompatible.map(lineText) },
      { heading: 'Gases that can come off', texts: gases.map(lineText) },
      { heading: 'Waste', texts: disposal.map(lineText) },
      // A grade that declares hazards has the line beside them.
      { heading: 'Carriage', texts: hazards ? [] : [transportText(undefined, day)] }
    ].filter(({ texts }) => texts.length > 0),
    exposure: {
      caption: 'Limits of exposure at work',
      columns: ['Of', 'Limit', 'Over', 'Issuer and year'].map(title => ({ title, numeric: false })),
      rows: exposure.flatMap(({ name, limits }) => limits.map(limit => limitRow(name, limit)))
    },
    exposureNote: EXPOSURE_NOTE,
    disclaimer: DISCLAIMER
  }
}

/** What the United States say of dust, and that the European Union has no such class. */
function dustOf(kind: GradeView['kind'], test: Parameters<typeof dustText>[2]): string[] {
  const shares = [{ substance: findSubstance('graphite')!, percent: 100 }]
  const dust = dustText({ shares }, kind === 'flake' ? 'dust' : 'pieces', test)
  if (!dust) return ['A dust test excluded combustible dust.']
  return [
    `United States: ${dust.signal}. ${dust.text} (${dust.because}; ${cited(dust.clause)}.)`,
    'The European Union has no such class; the limits of explosion of this dust are not known here.'
  ]
}

const lineText = ({ text, ...clause }: CautionLine): string =>
  unparted(`${text} (${sourceText(clause)}).`)

/** 'common practice, no source' is said of itself: nothing was there to check. */
const sourceText = (clause: Clause): string =>
  clause.source.includes('no source') ? clause.source : cited(clause)

function limitRow(name: string, limit: ExposureLimit): string[] {
  const { value, of } = limitParts(limit)
  const { issuer, year, over } = limit
  const cells = [
    of === '' ? name : `${name}, ${of}`,
    value,
    over,
    `${issuer}, ${year}${markText(limit)}`
  ]
  return cells.map(unparted)
}

/** How surely it was read; of a text named already no more than that. */
function markText({ issuer, source, sure }: ExposureLimit): string {
  if (sure === 'print') return ''
  const isNamed = source.startsWith(issuer.replace(/^.*?, /u, ''))
  return isNamed ? ` (${certaintyTexts[sure]})` : ` (${source}; ${certaintyTexts[sure]})`
}
