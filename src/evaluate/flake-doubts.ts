/** Figures of one flake lot that cannot both be right: told as warnings, the figures stand. */

import { uncertaintyOf } from '../metrology/estimate.ts'
import { type Problem, problemAt } from '../problem.ts'
import type { EvaluatedBatch } from './types.ts'

/** Standard uncertainties by which honest figures may miss each other. */
const NOISE = 4

/** Every doubt about the figures of one batch. */
export const doubtFlake = (batch: EvaluatedBatch): Problem[] => [...doubtTapping(batch)]

const shown = (value: number) => Number(value.toPrecision(4))

/** Tapping settles flake: it cannot become lighter by it. */
function doubtTapping({ entry, product }: EvaluatedBatch): Problem[] {
  const { looseDensity_g_per_mL: loose, tappedDensity_g_per_mL: tapped } = product
  if (!loose || !tapped) return []
  const noise = NOISE * Math.hypot(uncertaintyOf(loose.estimate), uncertaintyOf(tapped.estimate))
  const [before, after] = [loose.estimate.value, tapped.estimate.value]
  if (after >= before - noise) return []
  return [
    problemAt(
      entry.at(tapped.field),
      'CONTRADICTION',
      `a tapped density of ${shown(after)} g/mL does not go with a loose one of ${shown(before)} g/mL: tapping settles flake`,
      'check whether the two were exchanged, and mass and volume of each'
    )
  ]
}
