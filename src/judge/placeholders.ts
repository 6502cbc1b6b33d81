/** Records that readers see, with a text that setting up wrote for their author to replace. */

import { type Problem, problemAt } from '../problem.ts'
import { isPlaceholder } from '../records/placeholders.ts'
import type { CertificateOrder, Entry, Grade, Method, Records } from '../records/types.ts'
import { givesOwnResults } from './inspection.ts'
import type { JudgedLot } from './types.ts'

/**
 * Every public text that is still to be written. An edition that a later one follows is left as it is:
 * what was issued by it never changes; of a grade, the history prints every revision.
 */
export const checkPlaceholders = (records: Records): Problem[] => [
  ...openMethods(records)
    .filter(entry => records.methods.get(entry.record.id)?.at(-1) === entry)
    .map(openMethod),
  ...[...records.grades.values()]
    .flat()
    .filter(({ record }) => isPlaceholder('description', record.description))
    .map(openGrade)
]

const openMethods = ({ methods }: Records): Entry<Method>[] =>
  [...methods.values()]
    .flat()
    .filter(({ record }) => isPlaceholder('conditions', record.conditions))

const CONDITIONS = 'write how you test: mass, vessel, temperature, time, how it is read'

const openMethod = (entry: Entry<Method>): Problem =>
  problemAt(
    entry.at(['conditions']),
    'PLACEHOLDER',
    `is what setup wrote, and certificates would print it beside every figure by ${entry.record.id}`,
    CONDITIONS
  )

const openGrade = (entry: Entry<Grade>): Problem =>
  problemAt(
    entry.at(['description']),
    'PLACEHOLDER',
    `is what setup wrote, and the page and datasheet of ${entry.record.id} print it`,
    'write in a sentence what the product is and what it is for'
  )

/** What is frozen cannot be written afterwards: no certificate prints a method that says nothing. */
export function checkWritten(
  records: Records,
  { type, number }: CertificateOrder,
  { rows }: JudgedLot
): Problem[] {
  if (!givesOwnResults(type)) return []
  const used = new Set(rows.map(({ result }) => result?.method))
  return openMethods(records)
    .filter(({ record }) => used.has(record))
    .map(entry =>
      problemAt(
        entry.at(['conditions']),
        'NOT_CERTIFIABLE',
        `certificate ${number} would print what setup wrote, and what is issued never changes again`,
        CONDITIONS
      )
    )
}
