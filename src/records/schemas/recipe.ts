/** How a grade is charged: the producer's own ratios. Private; nothing here is invented by the program. */

import * as z from 'zod'
import { fields, list, maybe, quantity, refuse, text } from '../fields.ts'

/** What a part of a charge is for. */
export const chargeRoles = [
  'graphite',
  'acid',
  'oxidiser',
  'water',
  'neutraliser',
  'other'
] as const

const part = fields({
  as: z.enum(chargeRoles),
  /** Material lots of exactly this title alone. */
  title: maybe(text()),
  substance: maybe(text()),
  strength: maybe(quantity('%', 'from 0 to 100')),
  /** g of it, as sold, a gram of graphite. */
  'per-gram': maybe(quantity('1', 'above 0'))
})

const washing = fields({
  /** g of liquor that a gram of graphite holds back in the drained cake. */
  retained: quantity('1', 'above 0'),
  /** g of water of one wash, a gram of graphite. */
  wash: quantity('1', 'above 0'),
  /** Free acidity that washing is to reach, of the product. */
  'free-acid': quantity('%', 'above 0')
})

export const recipe = fields({
  /** Where it is written down. */
  from: text(),
  parts: list(part),
  washing: maybe(washing)
}).superRefine(({ parts }, context) => {
  if (parts.filter(one => one.as === 'graphite').length !== 1)
    refuse(context, ['parts'], 'INVALID_VALUE', [
      'a recipe has one part of graphite, which the others are a ratio to',
      "write one part 'as: graphite'"
    ])
  for (const [index, one] of parts.entries()) {
    if (one.as === 'graphite') continue
    if (one.substance === undefined)
      refuse(context, ['parts', index], 'MISSING_FIELD', [
        'this part does not say which substance it is',
        "add 'substance:', as in the composition of the material"
      ])
    if (!one.perGram && one.as !== 'neutraliser')
      refuse(context, ['parts', index], 'MISSING_FIELD', [
        'this part has no ratio to the graphite',
        "add 'per-gram:', in g of it a gram of graphite"
      ])
  }
})
