/** What a hazard block will need that nobody has written, or that no list knows: found before print. */

import { classNames, isClassName } from '../hazards/classes.ts'
import { MOST_STATEMENTS } from '../hazards/precautions.ts'
import { statementCodes, statementText } from '../hazards/statements.ts'
import type { JudgedLot } from '../judge/types.ts'
import { type FieldPath, type Problem, problemAt, quoted } from '../problem.ts'
import { suggestion } from '../records/validate.ts'
import type { Batch, Entry, Grade, Records } from '../records/types.ts'
import { labelFor } from './hazards.ts'

/** Stands alone in a declaration without a class. */
export const NOT_CLASSIFIED = 'not classified'

const reasons = {
  'unknown code': 'is no statement known here',
  'gap not filled': 'has a gap that the law leaves to the supplier, and no words for it',
  'nothing to fill': 'has no gap to fill'
} as const

/** Every text missing for the grades, and for the lots judged by them. */
export const checkTexts = (content: Records, lots: readonly JudgedLot[]): Problem[] => [
  ...[...content.grades.values()].flat().flatMap(checkGrade),
  ...[...content.batches.values()].flatMap(checkDecisions),
  ...lots.flatMap(lot => checkLot(content, lot))
]

function checkGrade(entry: Entry<Grade>): Problem[] {
  const { hazards } = entry.record
  if (!hazards) return []
  const problems = [...checkClassified(entry, hazards.classified), ...checkPrecautions(entry)]
  if (problems.length > 0) return problems
  const codes = codesOf(labelFor(hazards))
  return [...missingTexts(entry, codes, ''), ...strayFills(entry, codes)]
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
    if (isClassName(name)) return []
    const hint = suggestion(name, [...classNames, NOT_CLASSIFIED], 'classes known here')
    return [problemAt(place, 'UNKNOWN_WORD', `${quoted(name)} is no hazard class known here`, hint)]
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
          "take some out, or add 'precautions-because:' with the reason"
        )
      ]
}

interface Wanted {
  readonly code: string
  readonly fill?: string
}

function missingTexts(entry: Entry<Grade>, codes: readonly Wanted[], of: string): Problem[] {
  const { fill: fills = {}, precautions = [] } = entry.record.hazards!
  return codes.flatMap(({ code, fill }) => {
    const words = Object.hasOwn(fills, code) ? fills[code] : fill
    const statement = statementText(code, 'en', words)
    if (statement.ok) return []
    const listed = precautions.indexOf(code)
    const field: FieldPath =
      listed >= 0 ? ['hazards', 'precautions', listed] : ['hazards', 'classified']
    return [
      problemAt(
        entry.at(field),
        'MISSING_TEXT',
        `${code}${of} ${reasons[statement.reason]}`,
        hintFor(code, statement.reason)
      )
    ]
  })
}

function hintFor(code: string, reason: keyof typeof reasons): string {
  if (reason === 'unknown code') return suggestion(code, statementCodes, 'statements known here')
  return reason === 'gap not filled'
    ? `add 'fill: { ${code}: … }' with the words that belong there`
    : `take ${code} out of 'fill'`
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
  if (!entry || checkGrade(entry).length > 0) return []
  const own = new Set(codesOf(labelFor(grade.hazards)).map(({ code }) => code))
  const codes = codesOf(labelFor(grade.hazards, hazards)).filter(({ code }) => !own.has(code))
  return missingTexts(entry, codes, `, which lot ${evaluated.lot} needs,`)
}
