/** How long a lot may be sent for, and what tests repeated on it add to that. */

import { judge } from '../quality/judge.ts'
import { quantities, quantityOf, titleInSentence } from '../quantities.ts'
import { monthsLater } from '../records/dates.ts'
import type { Retest } from '../records/schemas/retest.ts'
import type { Grade } from '../records/types.ts'
import { boundsOf } from './judge-lot.ts'

interface Aged {
  readonly made: string
  readonly retested?: readonly Retest[] | undefined
}

/** Until when a lot may be sent, and why its last retest added nothing to that, if it did not. */
export interface RetestDate {
  readonly due: string
  readonly because?: string
}

/**
 * The day a lot has to be tested again by, as known on a day; undefined where its grade sets none.
 *
 * A retest counts where it gives every quantity the grade names as ageing, each within its limit.
 */
export function retestDate(grade: Grade, lot: Aged, day: string): RetestDate | undefined {
  const { retestAfterMonths: months } = grade
  if (months === undefined) return undefined
  const done = (lot.retested ?? [])
    .filter(({ on }) => on <= day)
    .map(retest => ({ on: retest.on, because: shortfall(grade, retest) }))
    .sort((a, b) => (a.on < b.on ? -1 : 1))
  const good = done.findLast(({ because }) => because === undefined)
  const last = done.at(-1)
  return {
    due: monthsLater(good?.on ?? lot.made, months),
    ...(last?.because === undefined ? {} : { because: `the retest of ${last.on} ${last.because}` })
  }
}

/** Quantities that are tested again: those the grade names, or all that it limits. */
export const ageingOf = ({ retest, limits }: Grade) =>
  retest ?? Object.values(quantities).flatMap(({ key }) => (limits[key] ? [key] : []))

/** What a retest lacks; undefined where it lacks nothing. */
function shortfall(grade: Grade, { results }: Retest): string | undefined {
  const rule = grade.decisionRule ?? 'simple'
  for (const key of ageingOf(grade)) {
    const title = titleInSentence(quantityOf(key)!)
    const figure = results[key]
    if (!figure) return `does not give ${title}`
    const { value, expandedUncertainty: U } = figure
    if (rule === 'guarded' && !U)
      return `gives ${title} without its uncertainty, which the grade's decision rule needs`
    const half = U?.value ?? 0
    const { word } = judge(
      { value: value.value, standardUncertainty: half / 2, expandedUncertainty: half },
      boundsOf(grade.limits[key]!),
      rule
    )
    if (word !== 'pass' && word !== 'conditional pass')
      return `found ${title} to be ${value.written}: ${word}`
  }
  return undefined
}
