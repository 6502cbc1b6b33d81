/**
 * Figures of two lots against each other: is their difference larger than its own uncertainty?
 *
 * Sources: JCGM 100:2008, 5.2 and F.1.2.3 for what two figures have in common, G.4.1 for degrees of
 * freedom. The interval is that of a difference, at about 95 %.
 */

import { coverageFactor } from '../metrology/coverage.ts'
import { roundResult } from '../metrology/rounding.ts'

/** What one pool of causes does to a figure, in the figure's unit. */
export interface Part {
  /** One number a pool, the same for every lot of a site. */
  readonly pool: number
  /** Degrees of freedom; absent where unlimited. */
  readonly df?: number
  /** Variance of what no other lot can share. */
  readonly own?: number
  /** Signed standard uncertainty by cause, each cause one number for every lot of a site. */
  readonly by?: Readonly<Record<string, number>>
}

/** One figure of a lot, as the pages that compare get it. */
export interface KnownFigure {
  readonly key: string
  readonly value: string
  readonly uncertainty?: string
  /** The unrounded value; a bound that the figure is below where `below` is true. */
  readonly exact: number
  readonly below?: boolean
  readonly limit?: string
  readonly verdict?: string
  /** Method and edition, or whose report. */
  readonly method: string
  /** Of a figure whose working is not published: standard uncertainty and degrees of freedom alone. */
  readonly u?: number
  readonly df?: number
  /** Where the working is published: what it is uncertain by. */
  readonly parts?: readonly Part[]
}

/** One lot, as the pages that compare get it. */
export interface KnownLot {
  readonly lot: string
  readonly figures: readonly KnownFigure[]
}

export interface Difference {
  readonly is: 'larger' | 'not larger' | 'unknown'
  /** '+3.2', '−0.004'; absent where unknown. */
  readonly printed?: string
  /** Expanded uncertainty of the difference, as printed. */
  readonly uncertainty?: string
  /** What must be said beside it. */
  readonly notes: readonly Note[]
}

/** Each has its words in `words.ts`. */
export type Note = 'below' | 'unstated' | 'methods' | 'apart'

/** How much the figure of a lot differs from that of another, the one it is compared with. */
export function differenceOf(lot: KnownFigure, from: KnownFigure): Difference {
  const methods: Note[] = lot.method === from.method ? [] : ['methods']
  if (lot.below || from.below) return { is: 'unknown', notes: ['below', ...methods] }
  if (!isUncertain(lot) || !isUncertain(from))
    return { is: 'unknown', notes: ['unstated', ...methods] }
  const apart: Note[] = lot.parts && from.parts ? [] : ['apart']
  const difference = lot.exact - from.exact
  const pools = poolsOf(lot, from)
  const variance = pools.reduce((sum, pool) => sum + pool.variance, 0)
  if (variance === 0) return { is: 'unknown', notes: ['unstated', ...methods] }
  const U = coverageFactor(freedomOf(pools, variance)) * Math.sqrt(variance)
  const rounded = roundResult(difference, U)
  return {
    is: Math.abs(difference) > U ? 'larger' : 'not larger',
    printed: signed(rounded.value),
    uncertainty: rounded.U,
    notes: [...methods, ...apart]
  }
}

const isUncertain = ({ parts, u }: KnownFigure) => parts !== undefined || u !== undefined

const signed = (text: string) =>
  text.startsWith('-') ? `−${text.slice(1)}` : Number(text) === 0 ? text : `+${text}`

interface Pool {
  readonly df: number
  variance: number
}

/** The causes of the difference, by pool: what both share counts by the difference of its effects. */
function poolsOf(lot: KnownFigure, from: KnownFigure): Pool[] {
  const pools = new Map<number | string, Pool>()
  const add = (name: number | string, df: number | undefined, variance: number) => {
    const pool = pools.get(name) ?? { df: df ?? Infinity, variance: 0 }
    pool.variance += variance
    pools.set(name, pool)
  }
  for (const figure of [lot, from]) {
    if (!figure.parts) add(figure === lot ? 'lot' : 'from', figure.df, (figure.u ?? 0) ** 2)
    for (const { pool, df, own } of figure.parts ?? []) add(pool, df, own ?? 0)
  }
  for (const { pool, df, by } of sharedOf(lot, from)) add(pool, df, by ** 2)
  return [...pools.values()]
}

/** Each cause that could be shared, with what it does to the difference. */
function sharedOf(lot: KnownFigure, from: KnownFigure) {
  const causes = new Map<string, { pool: number; df: number | undefined; by: number }>()
  for (const [figure, sign] of [
    [lot, 1],
    [from, -1]
  ] as const)
    for (const { pool, df, by = {} } of figure.parts ?? [])
      for (const [cause, u] of Object.entries(by)) {
        const known = causes.get(cause)
        causes.set(cause, { pool, df, by: (known?.by ?? 0) + sign * u })
      }
  return causes.values()
}

/** Welch–Satterthwaite over the pools. */
function freedomOf(pools: readonly Pool[], variance: number): number {
  const sum = pools.reduce((total, pool) => total + pool.variance ** 2 / pool.df, 0)
  return sum === 0 ? Infinity : variance ** 2 / sum
}
