/**
 * What a grade's datasheet says of hazards beyond the label: handling, what must not meet, gases,
 * limits of exposure, waste, carriage, and who decides. It is no safety data sheet and says so.
 */

import type { CautionLine } from '../hazards/cautions.ts'
import type { Clause } from '../hazards/clauses.ts'
import { dustText } from '../hazards/dust.ts'
import { type ExposureLimit, limitParts } from '../hazards/exposure.ts'
import { cautionsOfProduct } from '../hazards/product-cautions.ts'
import { findSubstance } from '../hazards/substances.ts'
import { articleNotes } from './article.ts'
import { english, type Tongue } from './languages/tongue.ts'
import type { GradeView } from './lot-view.ts'
import type { SafetyNotes } from './safety-types.ts'
import { transportText } from './transport.ts'
import { unparted } from './words.ts'

/** The notes of a grade as of a day, on which an adviser's decision is good or not. */
export function safetyNotes(grade: GradeView, day: string, tongue = english): SafetyNotes {
  const { kind, hazards } = grade
  const { headings, exposure: table, exposureNote, disclaimer } = tongue.safety
  const { handling, incompatible, gases, exposure, disposal } = cautionsOfProduct(kind)
  const linesOf = (lines: readonly CautionLine[]) => lines.map(line => lineText(line, tongue))
  return {
    sections: [
      { heading: headings.article, texts: articleNotes(grade, day, tongue) },
      { heading: headings.handling, texts: linesOf(handling) },
      { heading: headings.dust, texts: dustOf(kind, hazards?.dust, tongue) },
      { heading: headings.incompatible, texts: linesOf(incompatible) },
      { heading: headings.gases, texts: linesOf(gases) },
      { heading: headings.waste, texts: linesOf(disposal) },
      // A grade that declares hazards has the line beside them.
      {
        heading: headings.carriage,
        texts: hazards ? [] : [transportText(undefined, day, tongue)]
      }
    ].filter(({ texts }) => texts.length > 0),
    exposure: {
      caption: table.caption,
      columns: table.columns.map(title => ({ title, numeric: false })),
      rows: exposure.flatMap(({ name, limits }) =>
        limits.map(limit => limitRow(name, limit, tongue))
      )
    },
    exposureNote,
    disclaimer
  }
}

/** What the United States say of dust, and that the European Union has no such class. */
function dustOf(
  kind: GradeView['kind'],
  test: Parameters<typeof dustText>[2],
  { safety }: Tongue
): string[] {
  const shares = [{ substance: findSubstance('graphite')!, percent: 100 }]
  const dust = dustText({ shares }, kind === 'flake' ? 'dust' : 'pieces', test)
  return dust ? [safety.dust(dust), safety.noClass] : [safety.excluded]
}

/** A text of our own data files in the language. */
function ofData(text: string, { safety, lacks }: Tongue): string {
  const worded = safety.ofData(text)
  if (worded === undefined) lacks({ is: 'text', text })
  return worded ?? text
}

const lineText = ({ text, ...clause }: CautionLine, tongue: Tongue): string =>
  unparted(`${ofData(text, tongue)} (${sourceText(clause, tongue)}).`)

/** 'common practice, no source' is said of itself: nothing was there to check. */
function sourceText({ source, sure }: Clause, tongue: Tongue): string {
  const said = ofData(source, tongue)
  return sure === 'print' || source.includes('no source')
    ? said
    : `${said} (${tongue.safety.certainty[sure]})`
}

function limitRow(name: string, limit: ExposureLimit, tongue: Tongue): string[] {
  const { value, of } = limitParts(limit)
  const { issuer, year, over } = limit
  const said = (text: string) => ofData(text, tongue)
  const amount = value.replace(COUNT, unit => said(unit))
  const cells = [
    of === '' ? said(name) : `${said(name)}, ${said(of)}`,
    tongue.numbers.number(amount),
    tongue.safety.exposure.over[over],
    `${said(issuer)}, ${year}${markText(limit, tongue)}`
  ]
  return cells.map(unparted)
}

/** The one unit that is told in words. */
const COUNT = 'million particles per cubic foot'

/** How surely it was read; of a text named already no more than that. */
function markText({ issuer, source, sure }: ExposureLimit, tongue: Tongue): string {
  if (sure === 'print') return ''
  const isNamed = source.startsWith(issuer.replace(/^.*?, /u, ''))
  const certainty = tongue.safety.certainty[sure]
  return isNamed ? ` (${certainty})` : ` (${ofData(source, tongue)}; ${certainty})`
}
