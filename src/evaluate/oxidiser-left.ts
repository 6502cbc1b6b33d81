/** Oxidiser that a leach found, as a part of the flake. */

import { molarMass_g_per_mol } from '../chemistry/molar-mass.ts'
import { expand } from '../metrology/coverage.ts'
import type { EvaluatedBatch } from './types.ts'

const PERCENT_PER_MG_PER_KG = 1e-4

/**
 * Permanganate as its potassium salt, in % by mass with U; undefined where nobody looked for it. Below
 * its reporting limit it is 0 % with all of the limit as U.
 */
export function permanganateLeft_percent({
  process
}: EvaluatedBatch): { value: number; U: number } | undefined {
  const found = process.residualPermanganate_mg_per_kg
  if (!found) return undefined
  const salt = molarMass_g_per_mol('KMnO4') / molarMass_g_per_mol('MnO4')
  const percent = (value_mg_per_kg: number) => value_mg_per_kg * PERCENT_PER_MG_PER_KG * salt
  const { estimate, below } = found
  return below === undefined
    ? { value: percent(Math.max(0, estimate.value)), U: percent(expand(estimate).U) }
    : { value: 0, U: percent(below) }
}
