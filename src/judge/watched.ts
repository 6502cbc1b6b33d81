/** Figures of many lots, kept by grade and quantity for watching the process. */

import type { Result } from '../evaluate/types.ts'
import { expand } from '../metrology/coverage.ts'
import { uncertaintyOf } from '../metrology/estimate.ts'
import { compareText, type FieldPath, type Place } from '../problem.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import type { JudgedLot } from './types.ts'

/** What the watching keeps of one lot's figure, all in the quantity's unit. */
export interface WatchedFigure {
  readonly lot: string
  /** YYYY-MM-DD. */
  readonly made: string
  /** The grade it was made to, and the one it stands under since, where it was regraded. */
  readonly grade: string
  readonly soldAs: string
  readonly quantity: QuantityName
  readonly value: number
  /** Standard and expanded uncertainty. */
  readonly u: number
  readonly U: number
  /** Reporting limit, where the figure is only known to lie below it. */
  readonly below?: number
  /** Reported without readings: other hands, other instruments, or a spread nobody knows. */
  readonly isExternal: boolean
  /** Single sheets or readings behind the figure. */
  readonly readings: readonly number[]
  /** Where in its record the figure stands. */
  readonly place: () => Place
}

/** The figures of one quantity of one grade, by date, the latest `WINDOW` lots of them. */
export interface Series {
  readonly grade: string
  readonly quantity: QuantityName
  readonly figures: readonly WatchedFigure[]
  /** Older lots that are not looked at any more. */
  readonly older: number
}

/** Lots looked at: enough for a distribution-free interval of 95 % with 95 % confidence, which takes 93. */
export const WINDOW = 100

/** Every figure of a lot, product and process. */
export function watchedFigures({ evaluated, rows, grade }: JudgedLot): WatchedFigure[] {
  const results = [...rows.map(({ result }) => result), ...Object.values(evaluated.process)].filter(
    result => result !== undefined
  )
  const { entry } = evaluated
  const { made, grade: madeTo } = entry.record
  const lot = { lot: evaluated.lot, made, grade: madeTo, soldAs: grade.id }
  return results.map(result => watched(lot, result, entry))
}

type Head = Pick<WatchedFigure, 'lot' | 'made' | 'grade' | 'soldAs'>

/** Written out field by field: every figure of every lot goes through here. */
function watched(
  { lot, made, grade, soldAs }: Head,
  { quantity, estimate, below, report, each, field }: Result,
  entry: JudgedLot['evaluated']['entry']
): WatchedFigure {
  const figure = {
    lot,
    made,
    grade,
    soldAs,
    quantity,
    value: estimate.value,
    u: uncertaintyOf(estimate),
    U: expand(estimate).U,
    isExternal: report !== undefined,
    readings: each.map(one => one.estimate.value),
    place: placeOf(entry, field)
  }
  return below === undefined ? figure : { ...figure, below }
}

/** Holds on to the record alone: a closure made among the figures would keep every one of them. */
const placeOf =
  ({ at }: JudgedLot['evaluated']['entry'], field: FieldPath) =>
  () =>
    at(field)

/** Collects the figures of lots in any order; what it keeps grows with grades, not with lots. */
export interface Watch {
  add(figures: readonly WatchedFigure[]): void
  series(): Series[]
}

export function openWatch(): Watch {
  const kept = new Map<string, { figures: WatchedFigure[]; older: number }>()
  return {
    add(figures) {
      for (const figure of figures) {
        const key = `${figure.grade}\n${figure.quantity}`
        const one = kept.get(key) ?? { figures: [], older: 0 }
        one.figures.push(figure)
        kept.set(key, one.figures.length < 2 * WINDOW ? one : cut(one))
      }
    },
    series: () =>
      [...kept.values()]
        .map(cut)
        .map(({ figures, older }) => {
          const { grade, quantity } = figures[0]!
          return { grade, quantity, figures, older }
        })
        .sort((a, b) => compareText(a.grade, b.grade) || byQuantity(a, b))
  }
}

/** The latest of them, in order of date. */
function cut({ figures, older }: { figures: readonly WatchedFigure[]; older: number }) {
  const sorted = [...figures].sort(byDate)
  const left = Math.max(0, sorted.length - WINDOW)
  return { figures: sorted.slice(left), older: older + left }
}

const byDate = (a: WatchedFigure, b: WatchedFigure) =>
  compareText(a.made, b.made) || compareText(a.lot, b.lot)

const names = Object.keys(quantities)

const byQuantity = (a: Series, b: Series) => names.indexOf(a.quantity) - names.indexOf(b.quantity)
