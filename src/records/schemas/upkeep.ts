/** What became of spent acid, wash water and the like, and what went wrong. Private throughout. */

import * as z from 'zod'
import {
  condition,
  date,
  fields,
  identifier,
  list,
  maybe,
  quantity,
  refuse,
  text
} from '../fields.ts'
import { person } from './common.ts'

export const wasteKinds = [
  'spent acid',
  'wash water',
  'neutralised liquor',
  'filters and cloths',
  'reagent',
  'product',
  'other'
] as const

/** What of a lot itself is lost by this: thrown away, or spilled. */
const lost = () =>
  maybe(
    list(
      fields({
        lot: identifier(),
        /** Of the lot's containers, the one it was in. */
        container: maybe(identifier()),
        mass: quantity('g', 'above 0')
      })
    )
  )

/** Waste as collected, and where it went; what has gone nowhere yet is in store. */
export const wasteRecord = fields({
  number: identifier(),
  collected: date(),
  kind: z.enum(wasteKinds),
  what: maybe(text()),
  /** Lots it comes from. */
  lots: maybe(list(identifier())),
  lost: lost(),
  mass: maybe(quantity('g', 'above 0')),
  volume: maybe(quantity('mL', 'above 0')),
  ph: maybe(condition('step pH')),
  nitrate: maybe(quantity('mg/L', 'at least 0')),
  ammonium: maybe(quantity('mg/L', 'at least 0')),
  metals: maybe(list(fields({ metal: text(), concentration: quantity('mg/L', 'at least 0') }))),
  container: maybe(identifier()),
  by: maybe(person()),
  /** Whom it went to and under which permit or contract. */
  gone: maybe(fields({ on: date(), to: text(), under: text(), paper: maybe(text()) })),
  notes: maybe(text())
}).superRefine(({ collected, mass_g, volume_mL, gone }, context) => {
  if (!mass_g && !volume_mL)
    refuse(context, [], 'MISSING_FIELD', [
      'nothing says how much this is',
      "write 'mass:' or 'volume:'"
    ])
  if (gone && gone.on < collected)
    refuse(context, ['gone', 'on'], 'DATE_ORDER', [
      `went on ${gone.on}, before it was collected on ${collected}`,
      'check the two dates'
    ])
})

export const incidentKinds = ['spill', 'exposure', 'near miss', 'fire', 'other'] as const

/** What happened, what was done, and what changes; open until somebody has closed it. */
export const incidentRecord = fields({
  number: identifier(),
  happened: date(),
  at: maybe(text()),
  kind: z.enum(incidentKinds),
  what: text(),
  where: maybe(text()),
  /** Lots it concerns. */
  lots: maybe(list(identifier())),
  lost: lost(),
  /** Of a spill. */
  mass: maybe(quantity('g', 'above 0')),
  /** Of an exposure: to what, for how long, what first aid was given. */
  exposure: maybe(text()),
  done: maybe(text()),
  told: maybe(list(fields({ who: text(), on: date(), what: maybe(text()) }))),
  by: maybe(person()),
  closed: maybe(fields({ on: date(), by: text(), because: text() })),
  notes: maybe(text())
}).superRefine(({ happened, told = [], closed }, context) => {
  const days = [
    ...told.map(({ on }, index) => ({ on, field: ['told', index, 'on'] })),
    ...(closed ? [{ on: closed.on, field: ['closed', 'on'] }] : [])
  ]
  for (const { on, field } of days)
    if (on < happened)
      refuse(context, field, 'DATE_ORDER', [
        `is ${on}, before it happened on ${happened}`,
        'check the two dates'
      ])
})
