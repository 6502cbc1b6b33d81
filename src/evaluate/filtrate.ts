/** Free acid and slurry pH of one filtrate. */

import { filtratePH } from '../chemistry/acid-ph.ts'
import { exact } from '../metrology/estimate.ts'
import { oncePer } from '../records/once.ts'
import type { EvaluatedBatch } from './types.ts'

/**
 * pH that a batch's titrated acid makes of the same slurry; undefined where that cannot be told. Doubts
 * and hazards both ask for it, and solving for it takes longer than a lot's hazards do.
 */
export const predictedPH = oncePer(({ entry, product }: EvaluatedBatch): number | undefined => {
  const titration = entry.record.tests?.freeAcid
  const acid = product.freeAcid_percent
  if (!titration?.water_mL || !acid || acid.below !== undefined) return undefined
  const masses = titration.readings.map(({ mass_g }) => mass_g.value)
  return filtratePH({
    freeAcid_percent: exact(acid.estimate.value),
    mass_g: exact(masses.reduce((sum, mass) => sum + mass, 0) / masses.length),
    water_mL: exact(titration.water_mL.value)
  }).value
})
