/** What a hazard block will need that nobody has written, or that no list knows: found before print. */

import { classNames, isClassName } from '../hazards/classes.ts'
import { MOST_STATEMENTS } from '../hazards/precautions.ts'
import { type Edition, editionNames, isIn } from '../hazards/editions.ts'
import {
  codesIn,
  type Language,
  type StatementFault,
  statementText
} from '../hazards/statements.ts'
import type { JudgedLot } from '../judge/types.ts'
import { type FieldPath, type Problem, problemAt, quoted } from '../problem.ts'
import { suggestion } from '../records/validate.ts'
import type { Batch, Entry, Grade, Records } from '../records/types.ts'
import { fillFor } from './hazard-languages.ts'
import { editionsOf, labelFor } from './hazards.ts'
import { hazardsFor } from './lot-view.ts'

/** Stands alone in a declaration without a class. */
export const NOT_CLASSIFIED = 'not classified'

const reasons = {
  'unknown code': 'is no statement known here',
  'gap not filled': 'has a gap that the law leaves to the supplier, and no words for it',
  'nothing to fill': 'has no gap to fill',
  'not in this language': 'has no text in this language'
} as const

/** Every text missing for the grades, and for the lots judged by them. */
export const checkTexts = (content: Records, lots: readonly JudgedLot[]): Problem[] => [
  ...[...content.grades.values()].flat().flatMap(entry => checkGrade(content, entry)),
  ...[...content.batches.values()].flatMap(checkDecisions),
  ...lots.flatMap(lot => checkLot(content, lot))
]

function checkGrade({ producer }: Records, entry: Entry<Grade>): Problem[] {
  const hazards = hazardsFor(entry.record, producer?.record ?? {})
  if (!hazards) return []
  const problems = [
    ...checkClassified(entry, hazards.classified),
    ...checkPrecautions(entry),
    ...checkChooser(producer, entry)
  ]
  if (problems.length > 0) return problems
  const used = editionsOf(hazards).map(edition => ({
    edition,
    codes: codesOf(labelFor(hazards, undefined, edition))
  }))
  return [
    ...used.flatMap(({ edition, codes }) => missingTexts(entry, hazards, edition, codes, '')),
    ...strayFills(
      entry,
      used.flatMap(({ codes }) => codes)
    )
  ]
}

type Label = ReturnType<typeof labelFor>

const codesOf = ({ statements, precautions }: Label) => [
  ...statements,
  ...precautions.map(code => ({ code }))
]

function checkClassified(entry: Entry<Grade>, classified: readonly string[]): Problem[] {
  return classified.flatMap((name, index) => {
    const place = entry.at(['hazards', 'classified', index])
    if (name === NOT_CLASSIFIED)
      return classified.length === 1
        ? []
        : [
            problemAt(
              place,
              'INVALID_VALUE',
              `'${NOT_CLASSIFIED}' stands beside classes`,
              'write the classes, or this alone'
            )
          ]
    if (isClassName(name) && isIn('clp', name)) return []
    const hint = suggestion(
      name,
      [...classNames.filter(one => isIn('clp', one)), NOT_CLASSIFIED],
      'classes known here'
    )
    return [problemAt(place, 'UNKNOWN_WORD', `${quoted(name)} is no hazard class known here`, hint)]
  })
}

/** Who classified, and who chose the precautions, are roles of the producer. */
function checkChooser(producer: Records['producer'], entry: Entry<Grade>): Problem[] {
  const roles = producer?.record.roles.map(({ role }) => role)
  if (!roles) return []
  return (['classifiedBy', 'precautionsBy'] as const).flatMap(field => {
    const by = entry.record.hazards?.[field]
    return by === undefined || roles.includes(by)
      ? []
      : [
          problemAt(
            entry.at(['hazards', field]),
            'UNKNOWN_REFERENCE',
            `there is no role of the producer ${quoted(by)}`,
            suggestion(by, roles, 'each role of the producer recorded')
          )
        ]
  })
}

/** More precautions than six need their reason. */
function checkPrecautions(entry: Entry<Grade>): Problem[] {
  const { precautions = [], precautionsBecause } = entry.record.hazards!
  return precautions.length <= MOST_STATEMENTS || precautionsBecause !== undefined
    ? []
    : [
        problemAt(
          entry.at(['hazards', 'precautions']),
          'MISSING_FIELD',
          `${precautions.length} precautionary statements are more than the ${MOST_STATEMENTS} the law asks for`,
          "take some out, or add 'precautions-by:' with a role and 'precautions-because:'"
        )
      ]
}

interface Wanted {
  readonly code: string
  readonly fill?: string
}

type Hazards = NonNullable<Grade['hazards']>

/** Languages an edition's statements are wanted in: English, and others of CLP alone. */
const languagesOf = ({ languages = [] }: Hazards, edition: Edition) =>
  edition === 'clp' ? (['en', ...languages] as const) : (['en'] as const)

function missingTexts(
  entry: Entry<Grade>,
  hazards: Hazards,
  edition: Edition,
  codes: readonly Wanted[],
  of: string
): Problem[] {
  const { precautions = [] } = hazards
  return languagesOf(hazards, edition).flatMap(language =>
    codes.flatMap(({ code, fill }) => {
      const words = fillFor(hazards, code, language) ?? (language === 'en' ? fill : undefined)
      const statement = statementText(code, language, words, edition)
      if (statement.ok) return []
      const listed = precautions.indexOf(code)
      const field: FieldPath =
        listed >= 0 ? ['hazards', 'precautions', listed] : ['hazards', 'classified']
      const where = language === 'en' ? '' : ` in '${language}'`
      return [
        problemAt(
          entry.at(field),
          'MISSING_TEXT',
          `${code}${edition === 'clp' ? '' : ` of ${editionNames[edition]}`}${of} ${reasons[statement.reason]}${where}`,
          hintFor(code, statement.reason, language, edition)
        )
      ]
    })
  )
}

function hintFor(
  code: string,
  reason: StatementFault,
  language: Language,
  edition: Edition
): string {
  if (reason === 'unknown code') return suggestion(code, codesIn(edition), 'statements known here')
  if (reason === 'not in this language') return 'take the language out of languages'
  const field = language === 'en' ? 'fill' : `fill-in-languages: { ${language}`
  const end = language === 'en' ? '' : ' }'
  return reason === 'gap not filled'
    ? `add '${field}: { ${code}: … }${end}' with the words that belong there`
    : `take ${code} out of '${field}'`
}

function strayFills(entry: Entry<Grade>, codes: readonly Wanted[]): Problem[] {
  return Object.keys(entry.record.hazards?.fill ?? {})
    .filter(code => !codes.some(wanted => wanted.code === code))
    .map(code =>
      problemAt(
        entry.keyAt(['hazards', 'fill', code]),
        'MISSING_TEXT',
        `fills in ${code}, which is not among the statements`,
        'list it under precautions, or take it out'
      )
    )
}

/** Classes that decisions on a lot name. */
function checkDecisions(entry: Entry<Batch>): Problem[] {
  return (entry.record.hazards?.decisions ?? []).flatMap(({ class: name }, index) =>
    name === undefined || isClassName(name)
      ? []
      : [
          problemAt(
            entry.at(['hazards', 'decisions', index, 'class']),
            'UNKNOWN_WORD',
            `${quoted(name)} is no hazard class known here`,
            suggestion(name, classNames, 'classes known here')
          )
        ]
  )
}

/** Statements that a lot needs beyond its grade's own. */
function checkLot(content: Records, { grade, hazards, evaluated }: JudgedLot): Problem[] {
  if (!hazards || !grade.hazards) return []
  const { classes, supplements } = hazards.classification
  // Nothing computed, nothing beyond the grade's own.
  if (classes.length === 0 && supplements.length === 0) return []
  const entry = content.grades.get(grade.id)?.find(({ record }) => record === grade)
  const declared = hazardsFor(grade, content.producer?.record ?? {})!
  if (!entry || checkGrade(content, entry).length > 0) return []
  return editionsOf(declared).flatMap(edition => {
    const own = new Set(codesOf(labelFor(declared, undefined, edition)).map(({ code }) => code))
    const codes = codesOf(labelFor(declared, hazards, edition)).filter(({ code }) => !own.has(code))
    return missingTexts(entry, declared, edition, codes, `, which lot ${evaluated.lot} needs,`)
  })
}
