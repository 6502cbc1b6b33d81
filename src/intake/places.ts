/** Where on a sheet its thickness was read: two columns of a file to one list of positions. */

import type { Problem } from '../problem.ts'
import type { RecordValue } from '../records/edit.ts'
import { type Cell, cellProblem, type Sheet } from '../tables/sheet.ts'
import { distances, isDistance, PLACES } from './target.ts'
import type { Filling } from './values.ts'

const isPlace = ({ to }: Filling) => to.within === PLACES

/** The distance that a mapping names no column for, where it names one for the other. */
export function missingDistance(fillings: readonly Filling[]): string | undefined {
  const named = fillings.filter(isPlace).map(({ to }) => to.field)
  return named.length === 0 ? undefined : distances.find(name => !named.includes(name))
}

/** A line that has a place without a reading, or the other way round: lists would go out of step. */
export function halfPlaced(
  sheet: Sheet,
  meant: readonly Filling[],
  row: readonly Cell[]
): Problem[] {
  if (!meant.some(isPlace)) return []
  const together = meant.filter(one => isPlace(one) || one.to.shape.is === 'list')
  const isBlank = ({ column }: Filling) => (row[column.index]?.text ?? '') === ''
  const blank = together.filter(isBlank)
  if (blank.length === 0 || blank.length === together.length) return []
  return blank.map(({ column }) =>
    cellProblem(sheet, row[column.index] ?? row[0]!, [column.name], 'MISSING_FIELD', [
      'is blank, where the line gives the rest of a reading and its place',
      'fill it in, or leave the line out of the file'
    ])
  )
}

/** The same fields with places as the record has them: a list of x and y. */
export function withPlaces(
  fields: ReadonlyMap<string, RecordValue>
): ReadonlyMap<string, RecordValue> {
  const [x, y] = distances.map(name => fields.get(name))
  if (!Array.isArray(x) || !Array.isArray(y)) return fields
  const places = x.map((distance, index): RecordValue => ({
    x: distance as RecordValue,
    y: (y as readonly RecordValue[])[index]!
  }))
  const others = [...fields].filter(([name]) => !isDistance(name))
  return new Map([...others, [PLACES, places]])
}
