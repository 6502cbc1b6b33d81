/** What belongs to a figure beside it: what it holds for, how it was come by. */

import type { Remark } from '../evaluate/types.ts'
import type { Tongue } from './languages/tongue.ts'
import { measurerIn } from './reported.ts'

export const remarkText = (remark: Remark, tongue: Tongue): string =>
  tongue.results.remark(inTongue(remark, tongue))

/** A remark with the record's own words in the language. */
function inTongue(remark: Remark, tongue: Tongue): Remark {
  if (remark.is === 'defined') return { ...remark, as: tongue.own(remark.as) }
  return remark.is === 'from report' ? { ...remark, by: measurerIn(remark.by, tongue) } : remark
}
