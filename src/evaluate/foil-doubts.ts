/** Figures of one foil lot that cannot all be right: told as warnings, the figures stand. */

import { uncertaintyOf } from '../metrology/estimate.ts'
import { resiliencyFrom } from '../physics/compression.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { EvaluatedFoil } from './types.ts'

/** Standard uncertainties by which honest figures may miss each other. */
const NOISE = 4

/** Reports round and average before they divide: this part of the figure is no contradiction. */
const ROUNDED = 0.1

/** Every doubt about the figures of one foil lot. */
export const doubtFoil = (foil: EvaluatedFoil): Problem[] => doubtResiliency(foil)

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
