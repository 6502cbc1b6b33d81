/** Lists of lots as a page gets them, for tests. */

import { runInNewContext } from 'node:vm'
import type { KnownLot } from '../../src/archive/compare.ts'
import type { FigureColumn } from '../../src/archive/figures.ts'
import { writeCodes, writeDays, writeLists, writeNames } from '../../src/archive/columns.ts'
import { type LotList, readLots, type WrittenLots } from '../../src/archive/lots.ts'
import type { LotListWriter } from '../../src/data/lot-list.ts'
import type { LotPage } from '../../src/documents/types.ts'

export interface LoadedFiles {
  readonly lots: WrittenLots
  readonly figures: Readonly<Record<string, FigureColumn>>
  readonly known: Readonly<Record<string, KnownLot>>
}

/** The files of a list of lots, run as a page runs them. */
export function filesOf(pages: readonly LotPage[], writer: LotListWriter): LoadedFiles {
  const half = pages.length >> 1
  const parts = [writer.add(pages.slice(0, half)), writer.add(pages.slice(half))]
  const page: Partial<Record<'lotfolioLots' | 'lotfolioFigures' | 'lotfolioKnown', object>> = {}
  for (const { text } of [...parts, ...writer.files()]) runInNewContext(text, page)
  // Told anew by this side's own JSON, so that comparing finds no stranger's objects.
  return JSON.parse(
    JSON.stringify({
      lots: page.lotfolioLots,
      figures: page.lotfolioFigures,
      known: page.lotfolioKnown
    })
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
    quantities: [],
    parts: [lots.length]
  })
}
