/** What left the workshop, and to whom. Private throughout: no customer ever reaches a public page. */

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
  text,
  whole,
  yesNo
} from '../fields.ts'
import { labelRules, paperLanguages } from './common.ts'
import { containerKinds } from './container.ts'
import { customerLimits, decisionRules } from './grade.ts'

/** What goods are filled into, or are by themselves. */
export const goodsKinds = [...containerKinds, 'jar', 'roll', 'sheet'] as const

/** One container: what a label, a line of the packing list and a recall name. */
const container = fields({
  number: identifier(),
  kind: z.enum(goodsKinds),
  tare: quantity('g', 'at least 0'),
  net: quantity('g', 'above 0'),
  /** As weighed; tare and net together where it was not. */
  gross: maybe(quantity('g', 'above 0')),
  pieces: maybe(whole(1))
})

/** Goods of one lot, with what this customer asks of them beyond the grade. */
const shippedLot = fields({
  lot: identifier(),
  mass: quantity('g', 'above 0'),
  'customer-part': maybe(text()),
  containers: maybe(list(container)),
  limits: maybe(customerLimits),
  /** How the customer's limits are judged; as the grade's own where nothing is said. */
  'decision-rule': maybe(z.enum(decisionRules)),
  /** The customer takes the goods although they miss a limit of theirs. */
  accepted: maybe(fields({ by: text(), on: date(), because: text() }))
})

/** What the outside of the goods and the papers with them say. */
const packing = fields({
  packages: whole(1),
  gross: quantity('g', 'above 0'),
  'store-below': maybe(condition('storage temperature')),
  'keep-dry': maybe(yesNo()),
  origin: text(),
  'tariff-code': text(),
  'emergency-telephone': text()
})

/** That a revision of a safety data sheet was sent to this customer. */
const sentSheet = fields({
  sheet: identifier(),
  revision: whole(1),
  language: text(),
  sent: date()
})

/** What goods are for carriage, as somebody competent found. */
export const transportWords = ['dangerous goods', 'not dangerous goods'] as const

/** A decision of a named adviser. That goods are none is shown by tests, never by composition alone. */
const transport = fields({
  is: z.enum(transportWords),
  /** UN number, class and the like, in the adviser's words. */
  as: maybe(text()),
  by: text(),
  basis: text(),
  tests: maybe(list(text())),
  on: date(),
  until: date()
}).superRefine(({ is, as, tests, on, until }, context) => {
  if (is === 'not dangerous goods' && !tests)
    refuse(context, ['is'], 'MISSING_FIELD', [
      'composition alone does not show that goods are not dangerous: no test is named',
      "name the tests under 'tests:', or take the decision out: the papers then say that there is none"
    ])
  if (is === 'dangerous goods' && as === undefined)
    refuse(context, ['is'], 'MISSING_FIELD', [
      'needs what they are carried as',
      "add 'as:' with UN number, proper shipping name and class"
    ])
  if (until < on)
    refuse(context, ['until'], 'DATE_ORDER', [
      `ends on ${until}, before the decision on ${on}`,
      'check the two dates'
    ])
})

export const shipmentRecord = fields({
  number: identifier(),
  sent: date(),
  customer: text(),
  address: maybe(list(text())),
  order: maybe(text()),
  contents: list(shippedLot),
  packing: maybe(packing),
  /** Labels of its containers, for the market they go to; the producer's where nothing is said. */
  labels: maybe(labelRules),
  'safety-data-sheets': maybe(list(sentSheet)),
  transport: maybe(transport),
  /** Of the packing list; that of the records where nothing is said. A copy has its certificate’s. */
  language: maybe(z.enum(paperLanguages)),
  by: maybe(text()),
  notes: maybe(text())
})
