/** Room for figures, column by column, in tables of any kind. */

import type { BoardPart } from '../documents/board-types.ts'
import type { MeasuredProperty, TypicalProperty } from '../documents/grade-types.ts'
import type { ResultRow, Table } from '../documents/types.ts'
import { type ColumnShape, columnShape, cutFigure, type DecimalSign } from './decimals.ts'

/** Columns of a result table that hold figures. */
export interface ResultShapes {
  readonly value: ColumnShape
  readonly uncertainty: ColumnShape
  readonly coverage: ColumnShape
  readonly limit: ColumnShape
  readonly probability: ColumnShape
}

/** The filters that lay out figures whose decimals stand behind a sign. */
export function figureFilters(sign: DecimalSign) {
  const shapeOf = (texts: readonly string[]): ColumnShape => columnShape(texts, sign)
  const limitShape = (rows: readonly MeasuredProperty[]): ColumnShape =>
    shapeOf(rows.flatMap(({ limit }) => limit?.printed ?? []))
  return {
    cutFigure: (text: string, shape: ColumnShape) => cutFigure(text, shape, sign),
    resultShapes(rows: readonly ResultRow[]): ResultShapes {
      const shape = (text: (row: ResultRow) => string | undefined): ColumnShape =>
        shapeOf(rows.flatMap(row => text(row) ?? []))
      return {
        value: shape(row => row.value?.printed),
        uncertainty: shape(row => row.expandedUncertainty?.printed),
        coverage: shape(row => row.coverageFactor?.printed),
        limit: shape(row => row.limit?.printed),
        probability: shape(row => row.verdict?.probability?.printed)
      }
    },
    tableShapes: (table: Table): readonly ColumnShape[] =>
      table.columns.map((_, column) => shapeOf(table.rows.map(row => row[column] ?? ''))),
    /** Of a grade. */
    limitShape,
    /** Both ends of typical intervals, and the limits beside them. */
    typicalShapes: (typical: readonly TypicalProperty[]) => ({
      limit: limitShape(typical),
      lower: shapeOf(typical.map(({ lower }) => lower.printed)),
      upper: shapeOf(typical.map(({ upper }) => upper.printed))
    }),
    /** What stands behind the name in each row of a part of the board. */
    boardShapes: ({ columns, rows }: BoardPart): readonly ColumnShape[] =>
      columns.slice(1).map((_, cell) => shapeOf(rows.map(({ cells }) => cells[cell] ?? '')))
  }
}
