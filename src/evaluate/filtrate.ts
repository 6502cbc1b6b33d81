/** Free acid and slurry pH of one filtrate. */

import { filtratePH } from '../chemistry/acid-ph.ts'
import { exact } from '../metrology/estimate.ts'
import { oncePer } from '../records/once.ts'
import type { EvaluatedBatch } from './types.ts'

/**
 * pH that a batch's titrated acid makes of the same slurry; undefined where that cannot be told. Doubts
 * and hazards both ask for it, and solving for it takes longer than a lot's hazards do.
 */
export const predictedPH = oncePer((lot: EvaluatedBatch): number | undefined => {
  const acid = lot.product.freeAcid_percent
  return !acid || acid.below !== undefined ? undefined : slurryPH(lot, acid.estimate.value)
})

/** The same where less acid than can be told was titrated: the least pH it can make. */
export const leastPH = oncePer((lot: EvaluatedBatch): number | undefined => {
  const below = lot.product.freeAcid_percent?.below
  return below === undefined ? undefined : slurryPH(lot, below)
})

/** At the ratio of sample to water of the titration's own leach. */
function slurryPH({ entry }: EvaluatedBatch, freeAcid_percent: number): number | undefined {
  const titration = entry.record.tests?.freeAcid
  if (!titration?.water_mL) return undefined
  const masses = titration.readings.map(({ mass_g }) => mass_g.value)
  return filtratePH({
    freeAcid_percent: exact(freeAcid_percent),
    mass_g: exact(masses.reduce((sum, mass) => sum + mass, 0) / masses.length),
    water_mL: exact(titration.water_mL.value)
  }).value
}
