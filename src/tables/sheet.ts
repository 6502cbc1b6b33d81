/** A table as a file holds it: texts in cells, each with its place. */

import {
  type FieldPath,
  type Problem,
  problemAt,
  type ProblemCode,
  type SourceFile
} from '../problem.ts'

export interface Cell {
  /** As written, without space around it. */
  readonly text: string
  /** Offsets into the sheet's text. */
  readonly range: readonly [start: number, end: number]
  /** Worked out by the spreadsheet, not read from anything. */
  readonly isComputed?: boolean
  /** A number of a spreadsheet, in plain digits with a point. */
  readonly isNumber?: boolean
  /** Such a number whose decimals as shown are not known. */
  readonly isBare?: boolean
}

export interface Sheet {
  /** The file as text, or a spreadsheet's cells with tabs between them: line n is row n. */
  readonly file: SourceFile
  readonly rows: readonly (readonly Cell[])[]
  /** Of a text: what parts its cells. */
  readonly delimiter?: Delimiter
}

/** How a file is written, as far as that was said. */
export interface Dialect {
  readonly encoding?: Encoding | undefined
  readonly delimiter?: Delimiter | undefined
  /** Name of the sheet in a spreadsheet. */
  readonly sheet?: string | undefined
}

export const encodings = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const
export type Encoding = (typeof encodings)[number]

/** What parts the cells of a line. */
export const delimiters = { comma: ',', semicolon: ';', tab: '\t', bar: '|' } as const
export type Delimiter = keyof typeof delimiters

/** A fault at a cell, told by the heading of its column. */
export const cellProblem = (
  { file }: Sheet,
  cell: Pick<Cell, 'range'>,
  field: FieldPath,
  code: ProblemCode,
  [message, hint]: readonly [string, string]
): Problem => problemAt({ file, field, range: cell.range }, code, message, hint)

/** A fault of the file as a whole, told at its first line. */
export const fileProblem = (
  file: SourceFile,
  [message, hint]: readonly [string, string]
): Problem => problemAt({ file, field: [], range: [0, 1] }, 'NOT_A_TABLE', message, hint)

export const isBlankRow = (row: readonly Cell[]): boolean => row.every(({ text }) => text === '')
