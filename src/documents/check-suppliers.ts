/** Classifications of suppliers that no list knows, or that the law does not leave to a supplier. */

import { classNames, isClassName } from '../hazards/classes.ts'
import { statementCodes } from '../hazards/statements.ts'
import { findSubstance, isHarmonised } from '../hazards/substances.ts'
import { type FieldPath, type Problem, problemAt, quoted } from '../problem.ts'
import type { Entry, Material, Records } from '../records/types.ts'
import { suggestion } from '../records/validate.ts'

export const checkSuppliers = (content: Records): Problem[] =>
  [...content.materials.values()].flatMap(entry =>
    (entry.record.classification ?? []).flatMap((said, index) =>
      checkSaid(entry, said, ['classification', index])
    )
  )

type Said = NonNullable<Material['classification']>[number]

function checkSaid(entry: Entry<Material>, said: Said, at: FieldPath): Problem[] {
  const { classes = [], limits = [], statements = [], substance } = said
  const law = findSubstance(substance)
  const unknown = (field: FieldPath, word: string, what: string, known: readonly string[]) =>
    problemAt(
      entry.at([...at, ...field]),
      'UNKNOWN_WORD',
      `${quoted(word)} is no ${what} known here`,
      suggestion(word, known, `each ${what} known here`)
    )
  return [
    ...classes.flatMap(({ class: name }, index) =>
      isClassName(name)
        ? []
        : [unknown(['classes', index, 'class'], name, 'hazard class', classNames)]
    ),
    ...limits.flatMap(({ class: name }, index) => {
      const field = ['limits', index, 'class']
      if (!isClassName(name)) return [unknown(field, name, 'hazard class', classNames)]
      if (!law || !isHarmonised(law, name)) return []
      return [
        problemAt(
          entry.at([...at, ...field]),
          'INVALID_VALUE',
          `the law itself classifies ${substance} in the class of ${name}, and leaves no limit of it to a supplier`,
          `take it out: ${law.identity.source} and CLP Article 10(4) bind`
        )
      ]
    }),
    ...statements.flatMap((code, index) =>
      code.startsWith('EUH') && statementCodes.includes(code)
        ? []
        : [
            unknown(
              ['statements', index],
              code,
              'EUH statement',
              statementCodes.filter(one => one.startsWith('EUH'))
            )
          ]
    )
  ]
}
