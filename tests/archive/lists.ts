/** Lists of lots as a page gets them, for tests. */

import { runInNewContext } from 'node:vm'
import type { FigureColumn } from '../../src/archive/figures.ts'
import { writeCodes, writeDays, writeLists, writeNames } from '../../src/archive/columns.ts'
import { type LotList, readLots, type WrittenLots } from '../../src/archive/lots.ts'
import type { LotListWriter } from '../../src/data/lot-list.ts'
import type { LotPage } from '../../src/documents/types.ts'

export interface LoadedFiles {
  readonly lots: WrittenLots
  readonly figures: Readonly<Record<string, FigureColumn>>
}

/** The files of a list of lots, run as a page runs them. */
export function filesOf(pages: readonly LotPage[], writer: LotListWriter): LoadedFiles {
  writer.add(pages)
  const page: { lotfolioLots?: WrittenLots; lotfolioFigures?: Record<string, FigureColumn> } = {}
  for (const { text } of writer.files()) runInNewContext(text, page)
  // Told anew by this side's own JSON, so that comparing finds no stranger's objects.
  return JSON.parse(
    JSON.stringify({ lots: page.lotfolioLots, figures: page.lotfolioFigures })
  ) as LoadedFiles
}

/** A list of which only the numbers matter. */
export function listOf(lots: readonly string[]): LotList {
  const same = writeCodes(lots.map(() => ''))
  return readLots({
    format: 1,
    lots: writeNames(lots),
    made: writeDays(lots.map(() => '2026-01-01')),
    kind: same,
    grade: same,
    state: same,
    answer: same,
    chief: same,
    certificates: writeLists(lots.map(() => [])),
    from: writeLists(lots.map(() => [])),
    grades: [],
    quantities: []
  })
}
