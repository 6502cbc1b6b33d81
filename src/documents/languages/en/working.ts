/** How a figure came about, in English: what stands around formulas, readings, inputs and budgets. */

import type { OpenFormula, OpenSource } from '../../../evaluate/bases.ts'
import type { Column, Report } from '../../../evaluate/types.ts'
import { sieveText } from '../../../metrology/sieves.ts'
import { capital } from '../../capital.ts'
import type { PlanParts } from '../parts.ts'
import { budgetLine } from './budget-lines.ts'
import { note } from './notes.ts'
import { counted, date } from './numbers.ts'

/** 'bulkDensity' → 'Bulk density'. */
function input(name: string): string | undefined {
  if (name === 'pH') return name
  const words = name.replace(/(?<=[a-z])(?=[A-Z])/gu, ' ')
  return capital(words.toLowerCase().replace(/\bph\b/u, 'pH'))
}

export const working = {
  method: (id: string, edition: string, title: string) => `${id}, edition ${edition}: ${title}`,
  /** The figure with its k and degrees of freedom; undefined where these are unlimited. */
  outcome: (sum: string, k: string, df: number | undefined) =>
    `${sum} (k = ${k}, ${
      df === undefined
        ? 'unlimited degrees of freedom'
        : counted(df, 'degree of freedom', 'degrees of freedom')
    })`,
  below: (outcome: string, limit: string) => `${outcome}, below the reporting limit of ${limit}`,
  recorded: 'As recorded',
  inputs: 'Inputs',
  /** `place` is 'reading 1' or 'sheet 3'. */
  inputsOf: (place: string) => `Inputs of ${place}`,
  budget: 'What the uncertainty comes from',
  exact: 'taken as exact',
  columns: {
    reading: 'Reading',
    input: 'Input',
    value: 'Value',
    uncertainty: 'Standard uncertainty',
    instrument: 'Instrument',
    cause: 'Cause',
    type: 'Type',
    freedom: 'Degrees of freedom',
    share: 'Share of the variance'
  },
  inUnit: (title: string, unit: string) => `${title}, ${unit}`,
  column: (of: Column): string => (typeof of === 'string' ? of : `On ${sieveText(of)}`),
  /** Readings side by side in one cell. */
  several: (readings: readonly string[]) => readings.join(', '),
  /** A model's input by its name in code, without its unit; undefined for one without words. */
  input,
  formula: (text: OpenFormula): string => text,
  source: (text: OpenSource): string => text,
  note,
  budgetLine,
  places: {
    caption: 'Readings and their places',
    sheet: 'Sheet',
    thickness: 'Thickness, mm',
    above: 'Above the plane, mm'
  },
  reported: {
    formula: 'as reported: no readings of it are known here',
    source: ({ isOwn, number, by, date: day }: Report) =>
      isOwn
        ? `the producer's own earlier record ${number}, ${date(day)}`
        : `report ${number} of ${by}, ${date(day)}`,
    method: (method: string) => `Method, as reported: ${method}.`,
    scope: (scope: string) => `Scope, as reported: ${scope}.`,
    withoutUncertainty: (why: string) => `No uncertainty is stated: ${why}.`
  },
  visual: {
    title: 'Visual inspection',
    formula:
      'P = Σ f · g / h, f ways to draw k of the D that do not conform, g ways to draw the other n − k of the N − D that do, h ways to draw n of N, k from 0 to Ac',
    source: (isPrinted: boolean) =>
      `hypergeometric distribution; ISO 2859-1, single sampling, normal inspection, numbers as in MIL-STD-105E, table II-A${isPrinted ? '' : ' (from memory, not checked against the print)'}`,
    outcome: ({ nonconforming, inspected, acceptance, rejection, isAccepted }: PlanParts) =>
      `${nonconforming} of ${inspected} nonconforming, Ac ${acceptance}, Re ${rejection}: ${isAccepted ? 'accepted' : 'not accepted'}`,
    seen: 'What was seen',
    defect: 'Defect',
    defects: (kind: PlanParts['defects'][number]['kind']): string => kind,
    count: 'Count',
    plan: 'Plan',
    rows: (
      { unit, lotSize, level, aql, letters, sampleSize, acceptance }: PlanParts,
      acceptedAtAql: string,
      onceInTen: string
    ): readonly (readonly [title: string, value: string])[] => [
      [`Lot, in ${unit}s`, String(lotSize)],
      ['Inspection level', level],
      ['AQL', `${aql} %`],
      ['Letter', letters.join(' → ')],
      ['Sample', String(sampleSize)],
      ['Acceptance number', String(acceptance)],
      ['Accepted at the AQL', acceptedAtAql],
      ['Accepted one time in ten', `${onceInTen} nonconforming`]
    ],
    odds: 'How often the plan accepts this lot',
    nonconforming: 'Nonconforming in the lot',
    accepted: 'Accepted',
    of: (n: number, total: number) => `${n} of ${total}`,
    note: 'A lot that is accepted may hold units that do not conform.'
  },
  statement: {
    title: 'Statement of working',
    facts: { product: 'Product', grade: 'Grade', made: 'Made', status: 'Status' },
    grade: (title: string, revision: string) => `${title}, revision ${revision}`,
    made: date,
    says: [
      'Each figure is told with its formula, its readings as recorded, the inputs of one reading, and every cause of its uncertainty with its share of the variance.',
      'Expanded uncertainty is k times the standard uncertainty, for a coverage probability of about 95 %; k by Student’s t from the effective degrees of freedom.',
      'This is no certificate: it judges nothing and is not entered in the register.'
    ]
  }
}
