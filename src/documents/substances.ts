/** What was bought and sold of each substance in a calendar year, against the producer's thresholds. */

import { Decimal } from 'decimal.js'
import { type Ingredient, strengthOf } from '../evaluate/strength.ts'
import { compareText } from '../problem.ts'
import type { Content } from '../records/types.ts'
import { grams, type TraceGraph } from '../trace/graph.ts'
import type { BoardPart, BoardRow } from './board-types.ts'
import { kindTexts } from './words.ts'

export interface SubstanceInputs {
  readonly content: Content
  readonly graph: TraceGraph
  readonly asOf: string
}

/** A mass for a reader: grams below a kilogram, kilograms from there on, every recorded digit kept. */
export const massText = (mass_g: Decimal): string =>
  mass_g.abs().lessThan(1000) ? `${mass_g.toFixed()} g` : `${mass_g.div(1000).toFixed()} kg`

/** Masses by substance and year. */
type Ledger = Map<string, Map<string, Decimal>>

function enter(ledger: Ledger, substance: string, year: string, mass_g: Decimal): void {
  const years = ledger.get(substance) ?? new Map<string, Decimal>()
  years.set(year, (years.get(year) ?? new Decimal(0)).plus(mass_g))
  ledger.set(substance, years)
}

const yearOf = (day: string) => day.slice(0, 4)

/** What deliveries held: by their composition, or whole where none is recorded. */
function boughtIn({ content, asOf }: SubstanceInputs): Ledger {
  const ledger: Ledger = new Map()
  for (const { record } of content.materials.values()) {
    if (record.received > asOf) continue
    const mass_g = grams(record.quantity_g.value)
    const year = yearOf(record.received)
    if (!record.composition) enter(ledger, record.title, year, mass_g)
    for (const part of record.composition ?? [])
      enter(ledger, part.substance, year, mass_g.times(percentOf(record.lot, part)).div(100))
  }
  return ledger
}

/** Its part as written; by a density, rounded to what that tells. */
const percentOf = (lot: string, part: Ingredient): Decimal =>
  part.fraction_percent
    ? grams(part.fraction_percent.value)
    : new Decimal(strengthOf(lot, part).percent.value).toSignificantDigits(4)

/** What was sent to customers, less what came back in the same year. */
function soldIn({ graph }: SubstanceInputs): Ledger {
  const ledger: Ledger = new Map()
  const kindOf = (lot: string) => {
    const kind = graph.lots.get(lot)?.kind
    return kind === undefined || kind === 'material' ? lot : kindTexts[kind]
  }
  for (const [lot, all] of graph.sent)
    for (const { on, mass_g } of all) enter(ledger, kindOf(lot), yearOf(on), mass_g)
  for (const [lot, all] of graph.returns)
    for (const { on, mass_g } of all)
      enter(ledger, kindOf(lot), yearOf(on), grams(mass_g).negated())
  return ledger
}

/** Part of a threshold from which a year is told as near it. */
const NEAR = new Decimal('0.8')

export function substanceParts(inputs: SubstanceInputs): BoardPart[] {
  const thresholds = inputs.content.producer.record.yearlyThresholds ?? []
  const rowsOf = (ledger: Ledger): BoardRow[] =>
    [...ledger]
      .sort(([a], [b]) => compareText(a, b))
      .flatMap(([substance, years]) =>
        [...years]
          .sort(([a], [b]) => compareText(b, a))
          .map(([year, mass_g]) => rowOf(substance, year, mass_g, thresholds))
      )
  const columns = [
    { title: 'Substance', numeric: false },
    { title: 'Year', numeric: false },
    { title: 'Mass', numeric: true },
    { title: 'Threshold', numeric: false },
    { title: 'Standing', numeric: false }
  ]
  const about =
    'By calendar year, against the thresholds in producer.yaml. Which law asks for one, and what counts, the producer decides.'
  return [
    {
      id: 'bought',
      title: 'Bought',
      about,
      columns,
      rows: rowsOf(boughtIn(inputs)),
      otherwise: 'Nothing is recorded as bought.'
    },
    {
      id: 'sold',
      title: 'Sold',
      about,
      columns,
      rows: rowsOf(soldIn(inputs)),
      otherwise: 'Nothing is recorded as sold.'
    }
  ]
}

type Threshold = NonNullable<Content['producer']['record']['yearlyThresholds']>[number]

function rowOf(
  substance: string,
  year: string,
  mass_g: Decimal,
  thresholds: readonly Threshold[]
): BoardRow {
  const found = thresholds.find(threshold => threshold.substance === substance)
  if (!found) return { name: substance, cells: [year, massText(mass_g), 'none set', 'not judged'] }
  const limit_g = grams(found.mass_g.value)
  const reached = mass_g.greaterThanOrEqualTo(limit_g)
  const near = mass_g.greaterThanOrEqualTo(limit_g.times(NEAR))
  return {
    name: substance,
    cells: [
      year,
      massText(mass_g),
      `${massText(limit_g)}, ${found.because}`,
      reached ? 'reached' : near ? 'from 80 % on' : 'below'
    ],
    ...(reached ? { urgent: true } : {})
  }
}
