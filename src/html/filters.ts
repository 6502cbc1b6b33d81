/** The filters templates may use: choosing, ordering and laying out, never computing a figure. */

import { markOf } from '../archive/marks.ts'
import { drawRail } from '../figures/rail.ts'
import type { BoardPart } from '../documents/board-types.ts'
import type { Basis, ChainLink, LotSummary, ResultRow, Table } from '../documents/types.ts'
import type { MeasuredProperty, TypicalProperty } from '../documents/grade-types.ts'
import { type ColumnShape, columnShape, cutFigure } from './decimals.ts'
import { rootAddress, sharedAddress } from './head.ts'
import { mathml } from './mathml.ts'
import { relative } from './relative.ts'

/** Newest first; lots of one day by number, latest number first. */
const byAge = (a: LotSummary, b: LotSummary): number =>
  compare(b.made, a.made) || compare(b.lot, a.lot)

/** Code unit order, the same in every locale. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** The lots' lines for a list, newest first. */
export const newestFirst = (lots: readonly LotSummary[]): readonly LotSummary[] =>
  [...lots].sort(byAge)

/** Rows that stand under one of the three words. */
export const ofBasis = (rows: readonly ResultRow[], basis: Basis): readonly ResultRow[] =>
  rows.filter(row => row.basis === basis)

/** Rows a reader should look at first: judged, and not a plain pass. */
export const exceptions = (rows: readonly ResultRow[]): readonly ResultRow[] =>
  rows.filter(row => row.verdict && row.verdict.word !== 'pass')

/** Whether any row has a limit to be judged by. */
export const anyLimited = (rows: readonly ResultRow[]): boolean => rows.some(row => row.limit)

/** Whether a list holds an entry of this key. */
export const hasKey = (list: readonly { readonly key: string }[], key: string): boolean =>
  list.some(entry => entry.key === key)

/** Columns of a result table that hold figures. */
export interface ResultShapes {
  readonly value: ColumnShape
  readonly uncertainty: ColumnShape
  readonly coverage: ColumnShape
  readonly limit: ColumnShape
  readonly probability: ColumnShape
}

/** Room for the figures of a result table, by column. */
export function resultShapes(rows: readonly ResultRow[]): ResultShapes {
  const shape = (text: (row: ResultRow) => string | undefined): ColumnShape =>
    columnShape(rows.flatMap(row => text(row) ?? []))
  return {
    value: shape(row => row.value?.printed),
    uncertainty: shape(row => row.expandedUncertainty?.printed),
    coverage: shape(row => row.coverageFactor?.printed),
    limit: shape(row => row.limit?.printed),
    probability: shape(row => row.verdict?.probability?.printed)
  }
}

/** Room for the figures of any table, by column. */
export const tableShapes = (table: Table): readonly ColumnShape[] =>
  table.columns.map((_, column) => columnShape(table.rows.map(row => row[column] ?? '')))

/** Room for the limits of a grade. */
export const limitShape = (rows: readonly MeasuredProperty[]): ColumnShape =>
  columnShape(rows.flatMap(({ limit }) => limit?.printed ?? []))

/** Room for both ends of typical intervals, and the limits beside them. */
export const typicalShapes = (typical: readonly TypicalProperty[]) => ({
  limit: limitShape(typical),
  lower: columnShape(typical.map(({ lower }) => lower.printed)),
  upper: columnShape(typical.map(({ upper }) => upper.printed))
})

/** Room for what stands behind the name in each row of a part of the board. */
export const boardShapes = ({ columns, rows }: BoardPart): readonly ColumnShape[] =>
  columns.slice(1).map((_, cell) => columnShape(rows.map(({ cells }) => cells[cell] ?? '')))

/** A chain with the strokes beside it, line by line. */
export function railOf(chain: readonly ChainLink[]) {
  const links = new Map(chain.map(link => [link.lot, link]))
  const { width, lines } = drawRail(chain.map(({ lot, from }) => ({ id: lot, from: from ?? [] })))
  return { width, lines: lines.map(line => ({ ...line, link: links.get(line.id)! })) }
}

/** Address of the lot that a shape stands for; none for the frame and for lots without a page. */
export const urlOf = (
  { of }: { readonly of?: string },
  lots: readonly { readonly lot: string; readonly url?: string }[]
): string | undefined => (of === undefined ? undefined : lots.find(({ lot }) => lot === of)?.url)

/** What the site registers with its template engine, by the name templates use. */
export const filters = {
  relative,
  newestFirst,
  ofBasis,
  exceptions,
  anyLimited,
  hasKey,
  resultShapes,
  tableShapes,
  limitShape,
  typicalShapes,
  boardShapes,
  cutFigure,
  railOf,
  markOf,
  mathml,
  rootAddress,
  sharedAddress,
  urlOf
} as const
