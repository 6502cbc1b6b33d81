/** A lot's figures for programs: the content of its data.json, and the schema it keeps to. */

import * as z from 'zod'
import { hazardDataOf, hazardDataSchema } from './hazard-data.ts'
import {
  visualData,
  visualDataSchema,
  visualDemandData,
  visualDemandSchema
} from './visual-data.ts'
import { plainSpaces } from './words.ts'
import type {
  DecidingFigure,
  Figure,
  LimitText,
  LotPage,
  ResultRow,
  SiteDocument
} from './types.ts'
import type { ReportText } from './report-text.ts'

/** Raised when a field is added, changes its meaning or goes: the schema allows no others. */
export const LOT_DATA_VERSION = 6

export const quantityData = z.strictObject({
  title: z.string(),
  basis: z.enum(['measured', 'typical', 'not measured']),
  source: z
    .enum(['own', 'external'])
    .nullable()
    .describe('who measured it; null where it was not measured on this lot'),
  report: z
    .strictObject({
      by: z.string(),
      number: z.string(),
      date: z.string(),
      method: z.string().nullable(),
      scope: z.string().nullable(),
      sha256: z.string().nullable().describe('of the report as received')
    })
    .nullable()
    .describe(
      'of a result without readings: an external one, or an own one from before these records'
    ),
  unit: z.string().describe('UCUM code'),
  value: z.number().nullable().describe('unrounded, 12 significant digits; null where not known'),
  below: z
    .number()
    .nullable()
    .describe('reporting limit, where all that is known is less than this'),
  standardUncertainty: z.number().nullable(),
  effectiveDegreesOfFreedom: z.number().nullable().describe('null where unlimited or not known'),
  coverageFactor: z.number().nullable(),
  expandedUncertainty: z.number().nullable().describe('coverage probability about 95 %'),
  n: z.number().int().nullable().describe('readings or sheets'),
  tested: z.string().nullable(),
  method: z
    .strictObject({
      id: z.string(),
      edition: z.string(),
      title: z.string(),
      conditions: z.string(),
      deviation: z.string().nullable()
    })
    .nullable(),
  remark: z
    .string()
    .nullable()
    .describe('what belongs to the figure: conditions it holds for, how it varies over the lot'),
  limit: z
    .strictObject({
      min: z.number().nullable(),
      max: z.number().nullable(),
      written: z.string(),
      of: z.string()
    })
    .nullable(),
  verdict: z.string().nullable(),
  decidedBy: z
    .strictObject({
      place: z.string().describe('sheet or reading, by the name it has in the working'),
      of: z.number().int().describe('how many were judged'),
      value: z.number(),
      expandedUncertainty: z.number()
    })
    .nullable()
    .describe(
      'the single figure that verdict and probability are of, where the limit holds for each; null where they are of value'
    ),
  conformityProbability: z.number().nullable().describe('0 to 1')
})

export const lotDataSchema = z.strictObject({
  format: z.literal('lotfolio-lot-data'),
  formatVersion: z.literal(LOT_DATA_VERSION),
  edition: z.enum(['public', 'workshop']),
  producer: z.string(),
  lot: z.string(),
  kind: z.string(),
  made: z.string(),
  grade: z.strictObject({ id: z.string(), revision: z.string(), title: z.string() }).nullable(),
  status: z.strictObject({ state: z.string(), sentence: z.string() }),
  answer: z.strictObject({ verdict: z.string(), sentence: z.string() }),
  decisionRule: z.string(),
  quantities: z.record(z.string(), quantityData),
  process: z.record(z.string(), quantityData).nullable().describe('workshop edition only'),
  visual: visualDataSchema
    .nullable()
    .describe('null where nothing was looked at, or the grade keeps results private'),
  visualDemand: z
    .exactOptional(visualDemandSchema)
    .describe('what the grade asks to be looked at; absent where it asks for nothing'),
  hazards: hazardDataSchema.nullable().describe('null where the grade declares none'),
  chain: z.array(z.string()),
  certificates: z.array(
    z.strictObject({ number: z.string(), revision: z.string(), issued: z.string() })
  )
})

export type LotData = z.output<typeof lotDataSchema>
export type QuantityData = z.output<typeof quantityData>

/** JSON Schema of data.json, for whoever reads one. */
export const lotDataJsonSchema = () => z.toJSONSchema(lotDataSchema)

/** What a page's data is made from. */
export type LotDataSource = Pick<LotPage, 'document' | 'certificates'> &
  Partial<Pick<LotPage, 'process'>>

/** The figures of one page. */
export function lotDataOf(
  { document, process, certificates }: LotDataSource,
  site: Pick<SiteDocument, 'edition' | 'producer'>
): LotData {
  const { grade, status, answer } = document
  return {
    format: 'lotfolio-lot-data',
    formatVersion: LOT_DATA_VERSION,
    edition: site.edition,
    producer: site.producer.name,
    lot: document.lot,
    kind: document.kind,
    made: document.made,
    grade: grade ? { id: grade.id, revision: grade.revision, title: grade.title } : null,
    status: { state: status.state, sentence: status.sentence },
    answer: { verdict: answer.word, sentence: answer.sentence },
    decisionRule: document.decisionRule,
    quantities: quantitiesByKey(document.results),
    process: process ? quantitiesByKey(process.results) : null,
    visual: document.visual ? visualData(document.visual) : null,
    ...(document.visualDemand ? { visualDemand: visualDemandData(document.visualDemand) } : {}),
    hazards: document.hazards ? hazardDataOf(document.hazards, document.hazardReasons) : null,
    chain: document.chain.map(({ lot }) => lot),
    certificates: certificates.flatMap(({ document: { number, revision, dated, preview } }) =>
      preview || number === undefined || revision === undefined
        ? []
        : [{ number, revision, issued: dated }]
    )
  }
}

/** The text of a data file. */
export const lotDataText = (data: LotData): string => `${JSON.stringify(data, null, 2)}\n`

/** Rows as data, by their keys. */
export const quantitiesByKey = (rows: readonly ResultRow[]): Record<string, QuantityData> =>
  Object.fromEntries(rows.map(row => [row.key, quantityDataOf(row)]))

function quantityDataOf(row: ResultRow): QuantityData {
  const { value, below, limit, method, verdict, decidedBy } = row
  const probability = numberOf(verdict?.probability)
  return {
    title: row.title,
    basis: row.basis,
    source: row.report && !row.report.own ? 'external' : row.basis === 'measured' ? 'own' : null,
    report: row.report ? reportData(row.report) : null,
    unit: row.unit.ucum,
    value: below ? null : numberOf(value),
    below: below ? numberOf(value) : null,
    standardUncertainty: numberOf(row.standardUncertainty),
    effectiveDegreesOfFreedom: numberOf(row.degreesOfFreedom),
    coverageFactor: numberOf(row.coverageFactor),
    expandedUncertainty: numberOf(row.expandedUncertainty),
    n: row.n ?? null,
    tested: row.testedOn ?? null,
    method: method
      ? {
          id: method.id,
          edition: method.edition,
          title: plainSpaces(method.title),
          conditions: plainSpaces(method.conditions),
          deviation: method.deviation === undefined ? null : plainSpaces(method.deviation)
        }
      : null,
    remark: row.spread === undefined ? null : plainSpaces(row.spread),
    limit: limit ? limitData(limit) : null,
    verdict: verdict?.word ?? null,
    decidedBy: decidedBy ? decidingData(decidedBy) : null,
    conformityProbability: probability === null ? null : Number((probability / 100).toPrecision(12))
  }
}

const reportData = ({ by, number, date, method, scope, sha256 }: ReportText) => ({
  by,
  number,
  date,
  method: method ?? null,
  scope: scope ?? null,
  sha256: sha256 ?? null
})

const limitData = ({ min, max, printed, of }: LimitText) => ({
  min: numberOf(min),
  max: numberOf(max),
  written: printed,
  of
})

const decidingData = ({ place, count, value, expandedUncertainty }: DecidingFigure) => ({
  place,
  of: count,
  value: Number(value.exact),
  expandedUncertainty: Number(expandedUncertainty.exact)
})

/** The exact number behind a figure; null where it is absent or unlimited. */
function numberOf(figure: Figure | undefined): number | null {
  const value = Number(figure?.exact)
  return figure && Number.isFinite(value) ? value : null
}
