/**
 * A lot's place among the lots of its grade: for each figure with a limit, which others lie surely
 * below it, which surely above, and which cannot be told from it.
 *
 * Two figures are told apart where they differ by more than √(U₁² + U₂²). What they have in common, as
 * the same balance, would make the difference more certain: it is not counted, which errs on the side of
 * "not told apart". Source: common practice, no source.
 */

import type { JudgedRow } from '../judge/types.ts'
import type { Series, WatchedFigure } from '../judge/watched.ts'
import { drawStandingStrip } from '../figures/standing-strip.ts'
import { withUnit } from './figure.ts'
import { groupedBy } from './grouped.ts'
import type { LotView } from './lot-view.ts'
import { resultRow } from './result-row.ts'
import { periodText, printedEnds } from './typical.ts'
import type { StandingFigure, StandingText } from './watch-types.ts'
import { english, type Tongue } from './languages/tongue.ts'
import type { Figure } from './text-types.ts'

/** Fewer others are sooner compared with one by one. */
const FEWEST_OTHERS = 3

/** The part of a lot's page that tells its place, from the figures of all grades as the edition shows them. */
export function standings(
  series: readonly Series[]
): (view: LotView) => { readonly standing?: StandingText } {
  const byGrade = groupedBy(series, ({ grade }) => grade)
  return view => {
    const standing = standingOf(view, byGrade.get(view.grade.id) ?? [])
    return standing ? { standing } : {}
  }
}

/**
 * The place of a lot; absent where no figure with a limit has three others to stand among.
 *
 * @param series figures of its grade as the edition shows them
 */
export function standingOf(
  view: Pick<LotView, 'lot' | 'rows' | 'rule'> & { readonly tongue?: Tongue },
  series: readonly Series[]
): StandingText | undefined {
  const { tongue = english } = view
  const found = view.rows.flatMap(row => {
    const own = row.result && row.bounds && series.find(one => one.quantity === row.quantity)
    return own ? placeIn(own, view, row) : []
  })
  if (found.length === 0) return undefined
  const longest = found.reduce((a, b) => (b.lots.length > a.lots.length ? b : a))
  return {
    sentence: tongue.series.beside(
      longest.lots.length,
      longest.older > 0,
      periodText(longest.lots, tongue)
    ),
    figures: found.map(({ text }) => text)
  }
}

interface Found {
  readonly text: StandingFigure
  readonly lots: readonly WatchedFigure[]
  readonly older: number
}

/** Where a figure is only known to lie below something, it has no place. */
function placeIn(
  { quantity, figures, older }: Series,
  { lot, rule, tongue = english }: Pick<LotView, 'lot' | 'rule'> & { readonly tongue?: Tongue },
  row: JudgedRow
): Found[] {
  const known = figures.filter(({ below, isExternal }) => below === undefined && !isExternal)
  const own = known.find(figure => figure.lot === lot)
  const lots = known.filter(figure => figure.lot !== lot)
  if (!own || lots.length < FEWEST_OTHERS) return []
  const values = lots.map(({ value }) => value)
  const range = { lower: Math.min(...values), upper: Math.max(...values) }
  const { lower, upper } = printedEnds(range, values, quantity)
  const said = ({ printed }: Figure) => tongue.numbers.number(printed)
  const ends = [said(lower), said(upper)] as const
  const { key, title, unit, value, expandedUncertainty } = resultRow(row, rule, tongue)
  const printed = [value, expandedUncertainty].flatMap(one => (one ? [one.printed] : []))
  const { min, max } = row.bounds ?? {}
  const text: StandingFigure = {
    key,
    title,
    value: withUnit(printed.join(' ± '), unit.printed),
    others: withUnit(tongue.results.between(...ends), unit.printed),
    place: placeText(own, lots, tongue),
    drawing: drawStandingStrip({
      value: own.value,
      half: own.U,
      others: values,
      bounds: [min, max].flatMap(bound => (bound === undefined ? [] : [Number(bound)])),
      ends
    })
  }
  return [{ text, lots, older }]
}

/** 'above 2, below 1, not told apart from 4 of 7'. */
function placeText(own: WatchedFigure, lots: readonly WatchedFigure[], { series }: Tongue): string {
  const isApart = ({ value, U }: WatchedFigure) =>
    Math.abs(own.value - value) > Math.hypot(own.U, U)
  const apart = lots.filter(isApart)
  const above = apart.filter(({ value }) => value < own.value).length
  const below = apart.length - above
  const same = lots.length - apart.length
  return same === lots.length
    ? series.notTold(lots.length)
    : series.place(above, below, same, lots.length)
}
