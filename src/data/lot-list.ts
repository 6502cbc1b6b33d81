/** The lots as pages that search them load them: a list, and a file of figures for each quantity. */

import { writeCodes, writeDays, writeLists, writeNames } from '../archive/columns.ts'
import { type PrintedFigure, writeFigures } from '../archive/figures.ts'
import type { ListedQuantity, WrittenLots } from '../archive/lots.ts'
import { knownLotsText, numbering } from './known-lots.ts'
import type { LotPage, ResultRow, SiteDocument } from '../documents/types.ts'

/** Folder of these files in a site. */
const folder = 'archive'

/** Address of the list. */
export const lotListFile = `${folder}/lots.js`

/** Address of one quantity's figures. */
export const figuresFile = (key: string): string => `${folder}/${key}.js`

/** Address of what is known of one part of the lots, counted from 0. */
const partFile = (part: number): string => `${folder}/part-${part}.js`

export interface ListFile {
  readonly path: string
  readonly text: string
}

/** Collects the lots of a site, so that no page is held for them. */
export interface LotListWriter {
  /**
   * Take some lots in; gives the file of what comparing them takes.
   *
   * @param shown the same lots as this list words them; figures stand in every list with a point
   */
  add(pages: readonly LotPage[], shown?: readonly LotPage[]): ListFile
  /** The files of all, once every lot is in: the list first. */
  files(): ListFile[]
}

/** One lot, as far as the list tells of it. */
interface Line {
  readonly lot: string
  readonly made: string
  readonly kind: string
  readonly grade: string
  readonly state: string
  readonly answer: string
  readonly chief: string
  readonly certificates: readonly string[]
  readonly from: readonly string[]
}

/** Begin the list of a site. */
export function lotListWriter({ grades }: Pick<SiteDocument, 'grades'>): LotListWriter {
  const lines: Line[] = []
  const parts: number[] = []
  const numbered = numbering()
  const columns = new Map<string, { quantity: ListedQuantity; figures: PrintedFigure[] }>()
  return {
    add(pages, shown = pages) {
      for (const [index, page] of pages.entries()) {
        const worded = shown[index] ?? page
        const titles = new Map(measuredIn(worded).map(({ key, title }) => [key, title]))
        for (const row of measuredIn(page)) {
          const { key, title } = row
          const column = columnOf(columns, { ...row, title: titles.get(key) ?? title })
          column[lines.length] = printedOf(row)
        }
        lines.push(lineOf(worded))
      }
      const part = parts.push(pages.length) - 1
      return { path: partFile(part), text: knownLotsText(pages, numbered) }
    },
    files() {
      const quantities = [...columns.values()].map(({ quantity }) => quantity)
      const listed = grades.map(({ id, title, description }) => ({ id, title, description }))
      return [
        {
          path: lotListFile,
          text: `globalThis.lotfolioLots = ${JSON.stringify({ ...written(lines, listed, quantities), parts })}\n`
        },
        ...[...columns].map(([key, { figures }]) => ({
          path: figuresFile(key),
          text: figuresText(
            key,
            lines.map((_, row) => figures[row])
          )
        }))
      ]
    }
  }
}

const figuresText = (key: string, figures: readonly (PrintedFigure | undefined)[]) =>
  `(globalThis.lotfolioFigures ??= {})[${JSON.stringify(key)}] = ${JSON.stringify(writeFigures(figures))}\n`

const measuredIn = ({ document, process }: LotPage): ResultRow[] =>
  [...document.results, ...(process?.results ?? [])].filter(
    ({ basis, value }) => basis === 'measured' && value
  )

const printedOf = ({ value, expandedUncertainty }: ResultRow): PrintedFigure => ({
  value: value!.printed,
  ...(expandedUncertainty ? { uncertainty: expandedUncertainty.printed } : {})
})

function columnOf(
  columns: Map<string, { quantity: ListedQuantity; figures: PrintedFigure[] }>,
  { key, title, unit }: ResultRow
): PrintedFigure[] {
  const column = columns.get(key) ?? {
    quantity: { key, title, unit: unit.printed },
    figures: []
  }
  columns.set(key, column)
  return column.figures
}

const lineOf = ({ document, summary, certificates }: LotPage): Line => ({
  lot: document.lot,
  made: document.made,
  kind: document.kind,
  grade: document.grade?.id ?? '',
  state: document.status.state,
  answer: document.answer.word,
  chief: summary.key.map(({ key }) => key).join(' '),
  certificates: [...new Set(certificates.flatMap(({ document: { number } }) => number ?? []))],
  from: originsOf(document.chain, document.lot)
})

/** Every lot of the chain that a lot was made from, nearest first. */
function originsOf(chain: LotPage['document']['chain'], lot: string): string[] {
  const links = new Map(chain.map(link => [link.lot, link.from ?? []]))
  const found = new Set<string>()
  const open = [lot]
  for (const name of open)
    for (const from of links.get(name) ?? [])
      if (!found.has(from)) {
        found.add(from)
        open.push(from)
      }
  return [...found]
}

function written(
  lines: readonly Line[],
  grades: WrittenLots['grades'],
  quantities: WrittenLots['quantities']
): Omit<WrittenLots, 'parts'> {
  const codes = (name: 'kind' | 'grade' | 'state' | 'answer' | 'chief') =>
    writeCodes(lines.map(line => line[name]))
  return {
    format: 1,
    lots: writeNames(lines.map(({ lot }) => lot)),
    made: writeDays(lines.map(({ made }) => made)),
    kind: codes('kind'),
    grade: codes('grade'),
    state: codes('state'),
    answer: codes('answer'),
    chief: codes('chief'),
    certificates: writeLists(lines.map(({ certificates }) => certificates)),
    from: writeLists(lines.map(({ from }) => from)),
    grades,
    quantities
  }
}
