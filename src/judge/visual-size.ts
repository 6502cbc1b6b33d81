/** The size a look at foil was planned for, held against what the record has of the lot. */

import { type Problem, problemAt } from '../problem.ts'
import type { VisualRecord } from '../records/schemas/visual.ts'
import type { Entry, Foil } from '../records/types.ts'

/** Part of a length or number that trimming, edges and pieces cut off for tests may explain. */
const ROOM = 0.05

/** Pieces weigh unequally, and some are taken out: part by which masses may miss a number. */
const ROOM_BY_MASS = 0.15

/** What speaks against the size a lot was said to have. */
export function checkVisualSize(entry: Entry<Foil>): Problem[] {
  const { visual } = entry.record
  if (!visual) return []
  return visual.unit === 'metre' ? againstRoll(entry, visual) : againstSheets(entry, visual)
}

const told = (entry: Entry<Foil>, code: Problem['code'], message: string): Problem[] => [
  problemAt(
    entry.at(['visual', 'lotSize']),
    code,
    message,
    'count what the lot had when it was looked at: the plan follows from it'
  )
]

/** A roll has as many metres as its pieces; one begun counts as one. */
function againstRoll(entry: Entry<Foil>, { lotSize }: VisualRecord): Problem[] {
  const pieces = entry.record.tests?.roll?.pieces_m
  if (!pieces) return []
  const length_m = pieces.reduce((sum, { value }) => sum + value, 0)
  const least = Math.max(1, Math.floor((1 - ROOM) * length_m))
  const most = Math.ceil((1 + ROOM) * length_m)
  if (lotSize >= least && lotSize <= most) return []
  return told(
    entry,
    'INVALID_VALUE',
    `is ${lotSize} metres, and the roll is ${shown(length_m)} m long`
  )
}

/** No fewer sheets than were measured, and about as many as the saleable mass makes of their mean. */
function againstSheets(entry: Entry<Foil>, visual: VisualRecord): Problem[] {
  const { lotSize, takenOut = 0 } = visual
  const { sheets = [], saleable_g: saleable } = entry.record
  if (lotSize < sheets.length)
    return told(
      entry,
      'INVALID_VALUE',
      `is ${lotSize} sheets, and the record has ${sheets.length} of them`
    )
  if (sheets.length === 0 || !saleable) return []
  const mean_g = sheets.reduce((sum, { mass_g }) => sum + mass_g.value, 0) / sheets.length
  const number = saleable.value / mean_g
  const room = Math.max(1, ROOM_BY_MASS * number)
  if (lotSize >= number - room && lotSize - takenOut <= number + room) return []
  return told(
    entry,
    'CONTRADICTION',
    `is ${lotSize} sheets, where ${saleable.written} saleable are ${shown(number)} of the sheets measured`
  )
}

const shown = (value: number) => Number(value.toPrecision(3))
