/** Texts a document will need that nobody has written: found before anything is. */

import { statementCodes, statementText } from '../hazards/statements.ts'
import { type Problem, problemAt } from '../problem.ts'
import { suggestion } from '../records/validate.ts'
import type { Records, Entry, Grade } from '../records/types.ts'

const reasons = {
  'unknown code': 'is no statement known here',
  'gap not filled': 'has a gap that the law leaves to the supplier, and no words for it',
  'nothing to fill': 'has no gap to fill'
} as const

/** Hazard statements of every grade whose text is missing or unfinished. */
export const checkTexts = (content: Records): Problem[] =>
  [...content.grades.values()].flat().flatMap(checkStatements)

function checkStatements(entry: Entry<Grade>): Problem[] {
  const { statements = [], fill = {} } = entry.record.hazards ?? {}
  const listed = statements.flatMap((code, index) => {
    const statement = statementText(code, 'en', fill[code])
    if (statement.ok) return []
    const hint =
      statement.reason === 'unknown code'
        ? suggestion(code, statementCodes, 'statements known here')
        : statement.reason === 'gap not filled'
          ? `add 'fill: { ${code}: … }' with the words that belong there`
          : `take ${code} out of 'fill'`
    return [
      problemAt(
        entry.at(['hazards', 'statements', index]),
        'MISSING_TEXT',
        `${code} ${reasons[statement.reason]}`,
        hint
      )
    ]
  })
  const stray = Object.keys(fill)
    .filter(code => !statements.includes(code))
    .map(code =>
      problemAt(
        entry.keyAt(['hazards', 'fill', code]),
        'MISSING_TEXT',
        `fills in ${code}, which is not among the statements`,
        'list the statement too, or take it out'
      )
    )
  return [...listed, ...stray]
}
