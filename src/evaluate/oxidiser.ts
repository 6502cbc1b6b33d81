/**
 * Oxidiser left in flake. Dry graphite with oxidiser in it is an energetic mixture: a workshop sets
 * itself limits, below which flake has to be before it is dried or heated.
 *
 * Nothing here calls a batch safe. The records say what was done; a warning says where it was done
 * without the figure, or above it.
 */

import { expand } from '../metrology/coverage.ts'
import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import { quantities, titleInSentence } from '../quantities.ts'
import type { Entry, Records } from '../records/types.ts'
import type { EvaluatedBatch, EvaluatedLots, EvaluatedExpansion, Result } from './types.ts'

/** Residues a limit can be set on, by their field in the producer's record. */
const residues = {
  nitrate_mg_per_kg: 'residualNitrate_mg_per_kg',
  permanganate_mg_per_kg: 'residualPermanganate_mg_per_kg',
  manganese_mg_per_kg: 'residualManganese_mg_per_kg'
} as const

/** A residue against its limit. */
interface Residue {
  readonly quantity: (typeof residues)[keyof typeof residues]
  readonly limit: { readonly value: number; readonly written: string }
  readonly result: Result | undefined
}

/** Every residue of a batch above its limit, and every one not known although the batch was dried. */
export const doubtResidues = (batch: EvaluatedBatch, content: Records): Problem[] => {
  const held = chargedOxidiser(batch) ? residuesOf(content, batch) : []
  return [...held.flatMap(one => tooMuch(batch, one)), ...driedUntested(batch, held)]
}

/**
 * Why a batch that an oxidiser went into, at whatever step, is held: residues above the workshop's limits,
 * or not known by a day; a sentence each.
 */
export const oxidiserHolds = (content: Records, batch: EvaluatedBatch, day: string): string[] =>
  residuesOf(content, batch).flatMap(one => {
    const above = aboveLimit(one)
    if (!isKnownBy(one, day))
      return [
        `its ${titleInSentence(one.quantity)}, which the workshop limits, was not known by ${day}`
      ]
    return above === undefined ? [] : [`its ${above}`]
  })

/** Every batch that a furnace run heated above its limit, or without its figure. */
export function doubtHeated(
  { entry }: EvaluatedExpansion,
  { content, lots }: EvaluatedLots<Records>
): Problem[] {
  const { from, made } = entry.record
  return from.flatMap((use, index) => {
    const batch = lots.get(use.lot)
    return batch?.kind === 'batch'
      ? unheld(content, batch, made, entry, ['from', index, 'lot'])
      : []
  })
}

const chargedOxidiser = ({ entry }: EvaluatedBatch) =>
  (entry.record.charge ?? []).some(line => line.as === 'oxidiser')

/** The workshop's limits in force on the day a batch was made, with what was found. */
function residuesOf(content: Records, batch: EvaluatedBatch): Residue[] {
  const { record } = batch.entry
  const limits = content.producer?.record.oxidiserLimits
  if (!limits || record.made < limits.since) return []
  const { process } = batch
  return Object.entries(residues).flatMap(([field, quantity]) => {
    const limit = limits[field as keyof typeof residues]
    return limit ? [{ quantity, limit, result: process[quantity] }] : []
  })
}

/** Highest content the figure leaves open. */
const most = ({ estimate, below }: Result) => below ?? estimate.value + expand(estimate).U

const shown = (value: number) => `${Number(value.toPrecision(3))} mg/kg`

const isKnownBy = ({ result }: Residue, day: string): boolean =>
  result !== undefined && (result.tested ?? '') <= day

/** How far above its limit a residue may be; undefined where it is not, or not known at all. */
const aboveLimit = ({ quantity, limit, result }: Residue): string | undefined =>
  result && most(result) > limit.value
    ? `${titleInSentence(quantity)} may be up to ${shown(most(result))}, above the workshop's own limit of ${limit.written}`
    : undefined

function tooMuch({ entry }: EvaluatedBatch, one: Residue): Problem[] {
  const above = aboveLimit(one)
  if (above === undefined) return []
  return [
    problemAt(
      entry.at(one.result!.field),
      'OXIDISER_LEFT',
      above,
      'wash and test again; oxidiser in dry graphite is an energetic mixture, not to be dried or heated'
    )
  ]
}

const DRYING = /\bdr(y|ied|ying)\b/iu

function driedUntested(batch: EvaluatedBatch, held: readonly Residue[]): Problem[] {
  const step = (batch.entry.record.steps ?? []).findIndex(({ what }) => DRYING.test(what))
  if (step < 0) return []
  return held.flatMap(({ quantity, result }) =>
    result ? [] : [untested(batch.entry, ['steps', step, 'what'], batch.lot, quantity, 'dried')]
  )
}

function unheld(
  content: Records,
  batch: EvaluatedBatch,
  day: string,
  entry: Entry<unknown>,
  field: FieldPath
): Problem[] {
  if (!chargedOxidiser(batch)) return []
  return residuesOf(content, batch).flatMap(one => {
    if (!isKnownBy(one, day)) return [untested(entry, field, batch.lot, one.quantity, 'heated')]
    const above = aboveLimit(one)
    return above === undefined
      ? []
      : [
          problemAt(
            entry.at(field),
            'OXIDISER_LEFT',
            `${batch.lot} was heated although its ${above}`,
            'stop using it, and find out how it came to the furnace'
          )
        ]
  })
}

const untested = (
  entry: Entry<unknown>,
  field: FieldPath,
  lot: string,
  quantity: Residue['quantity'],
  done: 'dried' | 'heated'
): Problem =>
  problemAt(
    entry.at(field),
    'OXIDISER_LEFT',
    `${lot} was ${done} before its ${titleInSentence(quantity)} was known, which the workshop limits`,
    `test it first, and record it under 'tests: ${quantities[quantity].key}'`
  )
