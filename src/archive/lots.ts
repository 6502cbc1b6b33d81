/** The list of all lots as pages load it: who they are, and where their figures stand. */

import {
  type CodeColumn,
  type NameColumn,
  type NamesColumn,
  readCodes,
  readDays,
  readLists,
  readNames
} from './columns.ts'

/** A quantity that has a column of figures. */
export interface ListedQuantity {
  /** Name of its column's file. */
  readonly key: string
  readonly title: string
  readonly unit: string
}

export interface ListedGrade {
  readonly id: string
  readonly title: string
  readonly description: string
}

/** The list as it is written; every column has one entry a lot, newest first. */
export interface WrittenLots {
  readonly format: 1
  readonly lots: NameColumn
  readonly made: string
  readonly kind: CodeColumn
  readonly grade: CodeColumn
  readonly state: CodeColumn
  readonly answer: CodeColumn
  /** Keys of a lot's chief figures, a space between. */
  readonly chief: CodeColumn
  /** Certificates on each lot. */
  readonly certificates: NamesColumn
  /** Lots each was made from. */
  readonly from: NamesColumn
  readonly grades: readonly ListedGrade[]
  readonly quantities: readonly ListedQuantity[]
  /** Lots in each file of what comparing takes, one file after the other. */
  readonly parts: readonly number[]
}

/** A column of few words. */
export interface Words {
  readonly words: readonly string[]
  readonly codes: Uint16Array
}

/** The list as it is used. */
export interface LotList {
  readonly count: number
  readonly lots: readonly string[]
  readonly made: readonly string[]
  readonly kind: Words
  readonly grade: Words
  readonly state: Words
  readonly answer: Words
  readonly chief: Words
  readonly certificates: readonly (readonly string[])[]
  readonly from: readonly (readonly string[])[]
  readonly grades: readonly ListedGrade[]
  readonly quantities: readonly ListedQuantity[]
  /** Lots in each file of what comparing takes, one file after the other. */
  readonly parts: readonly number[]
}

const wordsOf = (column: CodeColumn): Words => ({
  words: column.words,
  codes: readCodes(column)
})

/** Read the list back. */
export function readLots(written: WrittenLots): LotList {
  const lots = readNames(written.lots)
  return {
    count: lots.length,
    lots,
    made: readDays(written.made),
    kind: wordsOf(written.kind),
    grade: wordsOf(written.grade),
    state: wordsOf(written.state),
    answer: wordsOf(written.answer),
    chief: wordsOf(written.chief),
    certificates: readLists(written.certificates),
    from: readLists(written.from),
    grades: written.grades,
    quantities: written.quantities,
    parts: written.parts
  }
}

/** What a row says in a column of words. */
export const wordAt = ({ words, codes }: Words, row: number): string => words[codes[row]!] ?? ''

/** Which file of what comparing takes has a row. */
export function partOf({ parts }: LotList, row: number): number {
  let before = 0
  return parts.findIndex(count => row < (before += count))
}
