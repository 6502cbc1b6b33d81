/** Foil looked at unit by unit, by a sampling plan or whole. */

import * as z from 'zod'
import { aqls, inspectionLevels } from '../../metrology/sampling-scheme.ts'
import { fields, list, maybe, refuse, whole, yesNo } from '../fields.ts'
import { testHead } from './common.ts'

/** What makes a unit nonconforming. */
export const defectKinds = [
  'blister',
  'crack',
  'wrinkle',
  'scratch',
  'hole',
  'inclusion',
  'torn edge',
  'delamination'
] as const

/** What is counted: a sheet, or a metre of a roll. */
export const visualUnits = ['sheet', 'metre'] as const

export const visualInspection = fields({
  ...testHead,
  unit: z.enum(visualUnits),
  'lot-size': whole(1),
  /** Of the plan; II where nothing is said. */
  level: maybe(z.enum(inspectionLevels)),
  /** Per cent nonconforming; needed unless the whole lot was looked at. */
  aql: maybe(z.enum(aqls)),
  inspected: whole(1),
  /** Units with one defect or more. */
  nonconforming: whole(0),
  /** Of those, taken out of the lot. */
  'taken-out': maybe(whole(0)),
  /** What was found, unit by unit or not: one unit can have several. */
  defects: maybe(list(fields({ kind: z.enum(defectKinds), count: whole(1) })))
}).superRefine((visual, context) => {
  const { lotSize, aql, inspected, nonconforming, takenOut = 0 } = visual
  const atMost = (field: string, value: number, most: number, what: string) => {
    if (value > most)
      refuse(context, [field], 'INVALID_VALUE', [
        `must be at most ${what} (${most}), got ${value}`,
        'count again; a unit with two defects is one unit'
      ])
  }
  atMost('inspected', inspected, lotSize, 'the size of the lot')
  atMost('nonconforming', nonconforming, inspected, 'what was inspected')
  atMost('takenOut', takenOut, nonconforming, 'what does not conform')
  if (inspected < lotSize && !aql)
    refuse(context, ['aql'], 'MISSING_FIELD', [
      'is missing: a part of the lot was looked at, and nothing says how much of it had to be',
      "add 'aql:', such as 2.5, and 'level:' where it is not II"
    ])
})

/** What a grade asks of each lot of foil: to be looked at whole, or by this plan at least. */
export const visualDemand = fields({
  whole: maybe(yesNo()),
  level: maybe(z.enum(inspectionLevels)),
  aql: maybe(z.enum(aqls))
}).superRefine(({ whole: isWhole, level, aql }, context) => {
  if (isWhole && (aql ?? level) !== undefined)
    refuse(context, [aql === undefined ? 'level' : 'aql'], 'INVALID_VALUE', [
      'is of a plan, beside the whole lot',
      'keep one of the two'
    ])
  if (!isWhole && aql === undefined)
    refuse(context, ['aql'], 'MISSING_FIELD', [
      'is missing: nothing says how much of a lot has to be looked at',
      "add 'aql:', such as 2.5, or write 'whole: yes'"
    ])
})

export type VisualDemand = z.output<typeof visualDemand>
export type VisualRecord = z.output<typeof visualInspection>
