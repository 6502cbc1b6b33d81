/** What a blend should come to, from its parts' figures: expected until it is tested itself. */

import type { EvaluatedLot, Results } from '../evaluate/types.ts'
import { expand } from '../metrology/coverage.ts'
import { type Estimate, propagate } from '../metrology/estimate.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import type { Batch } from '../records/types.ts'
import { resultFigures, unitText, withUnit } from './figure.ts'
import type { Table } from './types.ts'

/** Quantities that mix by mass; pH does not, and carbon follows from what does. */
const mixing: readonly QuantityName[] = [
  'expansionVolume_mL_per_g',
  'freeAcid_percent',
  'moisture_percent',
  'volatile_percent',
  'ash_percent'
]

/** A table of expected figures for a batch made from earlier ones; undefined for others. */
export function expectedTable(
  lots: ReadonlyMap<string, EvaluatedLot>,
  { from }: Batch
): Table | undefined {
  if (!from) return undefined
  // Each read of a lot's product works its figures out anew.
  const products = from.map(({ lot }) => lots.get(lot)?.product)
  const rows = mixing.flatMap(quantity => {
    const estimate = mixed(products, from, quantity)
    return estimate ? [expectedRow(quantity, estimate)] : []
  })
  if (rows.length === 0) return undefined
  return {
    caption: 'Expected from its parts, by mass',
    columns: [
      { title: 'Property', numeric: false },
      { title: 'Expected', numeric: true },
      { title: 'U', numeric: true }
    ],
    rows
  }
}

function expectedRow(quantity: QuantityName, estimate: Estimate): string[] {
  const unit = unitText(quantity).printed
  const { value, expandedUncertainty } = resultFigures(estimate.value, expand(estimate).U)
  return [
    quantities[quantity].title,
    withUnit(value.printed, unit),
    withUnit(expandedUncertainty.printed, unit)
  ]
}

function mixed(
  products: readonly (Results | undefined)[],
  from: NonNullable<Batch['from']>,
  quantity: QuantityName
): Estimate | undefined {
  const parts = products.map(product => measuredOf(product, quantity))
  if (parts.some(part => part === undefined)) return undefined
  const total = from.reduce((sum, { mass_g }) => sum + mass_g.value, 0)
  const inputs = Object.fromEntries(parts.map((part, index) => [`part${index}`, part!]))
  return propagate(
    x =>
      from.reduce((sum, { mass_g }, index) => sum + (x[`part${index}`]! * mass_g.value) / total, 0),
    inputs
  )
}

/** A figure below its reporting limit says too little to mix. */
const measuredOf = (results: Results | undefined, quantity: QuantityName): Estimate | undefined => {
  const result = results?.[quantity]
  return result && result.below === undefined ? result.estimate : undefined
}
