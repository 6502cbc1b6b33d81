/** A leach: sample, water, and what a strip, a photometer or an electrode reads in the extract. */

import { condition, fields, list, maybe, quantity } from '../fields.ts'
import { testHead } from './common.ts'

export const leachTest = () =>
  fields({
    ...testHead,
    extract: condition('extract'),
    blank: maybe(quantity('mg/L')),
    readings: list(fields({ mass: quantity('g'), concentration: quantity('mg/L') }))
  })
