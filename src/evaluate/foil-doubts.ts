/** Figures of one foil lot that cannot all be right: told as warnings, the figures stand. */

import { exact, uncertaintyOf } from '../metrology/estimate.ts'
import { resiliencyFrom } from '../physics/compression.ts'
import { lengthByMass } from '../physics/roll.ts'
import { type Problem, problemAt } from '../problem.ts'
import { type QuantityName, titleInSentence } from '../quantities.ts'
import type { EvaluatedFoil } from './types.ts'

/** Standard uncertainties by which honest figures may miss each other. */
const NOISE = 4

/** Reports round and average before they divide: this part of the figure is no contradiction. */
const ROUNDED = 0.1

/** Every doubt about the figures of one foil lot. */
export const doubtFoil = (foil: EvaluatedFoil): Problem[] => [
  ...doubtResiliency(foil),
  ...doubtRoll(foil),
  ...doubtPart(foil, 'leachableChloride_mg_per_kg', 'totalChlorine_mg_per_kg'),
  ...doubtPart(foil, 'leachableFluoride_mg_per_kg', 'totalFluorine_mg_per_kg'),
  ...doubtPart(foil, 'totalChlorine_mg_per_kg', 'totalHalogen_mg_per_kg'),
  ...doubtPart(foil, 'totalFluorine_mg_per_kg', 'totalHalogen_mg_per_kg')
]

const shown = (value: number) => Number(value.toPrecision(3))

/** Compressibility and recovery fix the resiliency: three figures that disagree are not of one piece. */
function doubtResiliency({ entry, product }: EvaluatedFoil): Problem[] {
  const { compressibility_percent: c, recovery_percent: r, resiliency_percent: s } = product
  if (!c || !r || !s || c.estimate.value >= 100 || c.estimate.value < 0) return []
  const expected = resiliencyFrom(c.estimate.value, r.estimate.value)
  const found = s.estimate.value
  const room = ROUNDED * Math.abs(expected) + NOISE * uncertaintyOf(s.estimate)
  if (Math.abs(found - expected) <= room) return []
  return [
    problemAt(
      entry.at(s.field),
      'CONTRADICTION',
      `a resiliency of ${shown(found)} % does not go with a compressibility of ${shown(c.estimate.value)} % and a recovery of ${shown(r.estimate.value)} %, which make it about ${shown(expected)} %`,
      'the three follow from the same thicknesses: check which figure is of another test'
    )
  ]
}

/** What leaches out is part of what there is; where the whole lies below a limit, so does the part. */
function doubtPart(
  { entry, product }: EvaluatedFoil,
  partName: QuantityName,
  wholeName: QuantityName
): Problem[] {
  const { [partName]: part, [wholeName]: whole } = product
  if (!part || !whole) return []
  const most = whole.below ?? whole.estimate.value
  const noise =
    NOISE *
    Math.hypot(
      uncertaintyOf(part.estimate),
      whole.below === undefined ? uncertaintyOf(whole.estimate) : 0
    )
  if (part.estimate.value <= most + noise) return []
  return [
    problemAt(
      entry.at(whole.field),
      'CONTRADICTION',
      `${titleInSentence(wholeName)} of ${whole.below === undefined ? '' : 'less than '}${shown(most)} mg/kg does not go with ${titleInSentence(partName)} of ${shown(part.estimate.value)} mg/kg, which is part of it`,
      'check both and their units'
    )
  ]
}

/** Part of a length that splices, edges and a core left in are allowed to explain. */
const ROLL_ROOM = 0.05

/** Mass, areal mass and width of a roll fix its length. */
function doubtRoll({ entry, product }: EvaluatedFoil): Problem[] {
  const { rollLength_m: length, rollWidth_mm: width, arealMass_g_per_m2: areal } = product
  const mass = entry.record.tests?.roll?.mass_g
  if (!length || !width || !areal || !mass) return []
  const expected = lengthByMass({
    mass_g: exact(mass.value),
    arealMass_g_per_m2: areal.estimate,
    width_mm: width.estimate
  })
  const found = length.estimate.value
  const noise = NOISE * Math.hypot(uncertaintyOf(expected), uncertaintyOf(length.estimate))
  if (Math.abs(found - expected.value) <= ROLL_ROOM * found + noise) return []
  return [
    problemAt(
      entry.at(length.field),
      'CONTRADICTION',
      `a roll of ${shown(found)} m does not go with its mass of ${mass.written}, which its areal mass and width make ${shown(expected.value)} m`,
      'check the pieces, the width, and whether the core was weighed'
    )
  ]
}
