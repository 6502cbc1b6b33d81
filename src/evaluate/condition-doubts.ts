/** Conditions beyond what is usual: told as warnings, the record stands. */

import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import { type ConditionName, conditions, unusualIn } from '../records/conditions.ts'
import { oncePer } from '../records/once.ts'
import type { Entry, Records } from '../records/types.ts'

/** Every condition of lots, panels and grades that is hardly what was meant. */
export function doubtConditions(content: Records): Problem[] {
  const { grades, batches, expansions, foils, panels, shipments, waste } = content
  const entries: Entry<unknown>[] = [
    ...[...grades.values()].flat(),
    ...[batches, expansions, foils, panels, shipments, waste].flatMap(of => [...of.values()])
  ]
  return entries.flatMap(doubtEntry)
}

const doubtEntry = oncePer((entry: Entry<unknown>): Problem[] => {
  const all = unusualIn(entry.record)
  const alike = (field: FieldPath) => all.filter(one => columnOf(one.field) === columnOf(field))
  const first = all.filter(one => alike(one.field)[0] === one)
  return first.map(({ field, reading: { written, unusual } }) => {
    const others = alike(field).length - 1
    return problemAt(
      entry.at(field),
      'IMPLAUSIBLE',
      `is ${written}, outside the usual ${usualOf(unusual)}${others === 0 ? '' : `; so ${others === 1 ? 'is one more line' : `are ${others} more lines`}`}`,
      'check the digits and the unit; if it was so, leave it'
    )
  })
})

/** Lines of one list, such as a log, are told once. */
const columnOf = (field: FieldPath) => field.filter(step => typeof step === 'string').join('.')

/** '−200 to 700 °C' */
function usualOf(name: ConditionName): string {
  const { usual, unit } = conditions[name]
  const shown = usual.map(bound => String(bound).replace('-', '−')).join(' to ')
  return unit === '1' ? shown : `${shown} ${unit}`
}
