/** The archive as one table for spreadsheets: a line for each quantity of each lot. */

import type { LotData, QuantityData } from '../documents/lot-data.ts'
import type { LotPage, SiteDocument } from '../documents/types.ts'
import { csvLines } from './csv.ts'
import { dataOf } from './lot-data.ts'

/** Address of the table. */
export const lotTableFile = 'lots.csv'

const columns = [
  'lot',
  'kind',
  'grade',
  'grade revision',
  'made',
  'state',
  'certificate',
  'quantity',
  'title',
  'basis',
  'value',
  'below',
  'U',
  'k',
  'unit',
  'n',
  'tested',
  'method',
  'method edition',
  'limit min',
  'limit max',
  'limit of',
  'verdict',
  'decided by',
  'decided by value',
  'decided by U'
] as const

type Row = Partial<Record<(typeof columns)[number], string | number | null>>

/**
 * The table's first line. It begins with a byte order mark: spreadsheets on Windows take a file
 * without one for the local code page, and would spoil 'H₂SO₄'.
 */
export const lotTableHead = (): string => `\uFEFF${csvLines([columns])}`

/** Gives the lines of one lot; a lot without published figures has one, its figures blank. */
export type LotLines = (page: LotPage) => string

/** The lines of a site's lots. */
export function lotLines(site: SiteDocument): LotLines {
  const standing = standingByLot(site)
  return page => {
    const data = dataOf(page, site)
    const lot = lotCells(data, standing.get(data.lot) ?? [])
    const figures = Object.entries({ ...data.process, ...data.quantities })
    const rows = figures.map(([key, figure]) => ({ ...lot, ...figureCells(key, figure) }))
    return csvLines((rows.length > 0 ? rows : [lot]).map(cellsOf))
  }
}

/** Certificates that stand, by lot: not those superseded or withdrawn. */
function standingByLot({ certificates }: SiteDocument): Map<string, string[]> {
  const standing = new Map<string, string[]>()
  for (const { lot, number, revisions } of certificates)
    for (const { revision } of revisions.filter(({ state }) => state === 'current'))
      standing.set(lot, [...(standing.get(lot) ?? []), `${number} r${revision}`])
  return standing
}

const lotCells = (data: LotData, certificates: readonly string[]): Row => ({
  lot: data.lot,
  kind: data.kind,
  grade: data.grade?.id ?? null,
  'grade revision': data.grade?.revision ?? null,
  made: data.made,
  state: data.status.state,
  certificate: certificates.join('; ')
})

const figureCells = (key: string, figure: QuantityData): Row => ({
  quantity: key,
  title: figure.title,
  basis: figure.basis,
  value: figure.value,
  below: figure.below,
  U: figure.expandedUncertainty,
  k: figure.coverageFactor,
  unit: figure.unit,
  n: figure.n,
  tested: figure.tested,
  method: figure.method?.id ?? null,
  'method edition': figure.method?.edition ?? null,
  'limit min': figure.limit?.min ?? null,
  'limit max': figure.limit?.max ?? null,
  'limit of': figure.limit?.of ?? null,
  verdict: figure.verdict,
  'decided by': figure.decidedBy?.place ?? null,
  'decided by value': figure.decidedBy?.value ?? null,
  'decided by U': figure.decidedBy?.expandedUncertainty ?? null
})

/** The cells of a line; blank where there is nothing to say. */
const cellsOf = (row: Row): string[] => columns.map(column => String(row[column] ?? ''))
