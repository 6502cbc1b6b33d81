/**
 * Formula and source of every figure that customers may see, as their models state them. They are closed:
 * each language has its own wording of every one, and lacks none.
 */

import { ashBasis } from '../chemistry/ash.ts'
import { acidEquivalentBasis, freeSulfateBasis, sulfurBasis } from '../chemistry/barium-sulfate.ts'
import { moistureBasis } from '../chemistry/drying.ts'
import { devolatilisedCarbonBasis, fixedCarbonBasis } from '../chemistry/fixed-carbon.ts'
import { acidAmountBasis, freeAcidBasis } from '../chemistry/free-acidity.ts'
import { leachedBasis } from '../chemistry/leached.ts'
import { oxidationLossBasis } from '../chemistry/oxidation-loss.ts'
import { reportingLimitBasis } from '../chemistry/reporting-limit.ts'
import { volatileBasis } from '../chemistry/volatile.ts'
import { looseDensityBasis, tappedDensityBasis } from '../physics/bulk-density.ts'
import { compressibilityBasis, recoveryBasis, resiliencyBasis } from '../physics/compression.ts'
import { conductivityBasis } from '../physics/conductivity.ts'
import { creepBasis } from '../physics/creep.ts'
import { expansionVolumeBasis } from '../physics/expansion-volume.ts'
import { arealMassBasis, foilDensityBasis } from '../physics/foil-density.ts'
import { leakBasis } from '../physics/leak-rate.ts'
import { porosityBasis } from '../physics/porosity.ts'
import {
  conductivityOfFoilBasis,
  fourPointBasis,
  stripBasis,
  vanDerPauwBasis
} from '../physics/resistivity.ts'
import { rollLengthBasis, rollWidthBasis } from '../physics/roll.ts'
import { retainedBasis, sieveLossBasis, sieveSizeBasis } from '../physics/sieve-analysis.ts'
import { forcePerWidthBasis, tensileBasis } from '../physics/tensile.ts'
import { thermalBasis, thermalEstimateBasis } from '../physics/thermal-conductivity.ts'
import { taperAcrossBasis, taperAlongBasis } from '../physics/thickness-field.ts'
import { soakKeptBasis } from '../physics/water-soak.ts'
import { expansionRatioBasis } from '../physics/worms.ts'

/** Means that no model's file states. */
export const meanBases = {
  thickness: { formula: 't = (Σ t_i) / n, n positions', source: 'definition of the mean' },
  pH: {
    formula: 'pH = (Σ pH_i) / n, n readings',
    source: 'arithmetic mean of pH readings: common practice, no source'
  },
  onset: {
    formula: 'T = (Σ T_i) / n, n readings',
    source: 'no standard known: the definition stands beside the figure'
  }
} as const

export const openBases = [
  ashBasis,
  sulfurBasis,
  freeSulfateBasis,
  acidEquivalentBasis,
  moistureBasis,
  fixedCarbonBasis,
  devolatilisedCarbonBasis,
  freeAcidBasis,
  acidAmountBasis,
  leachedBasis,
  oxidationLossBasis,
  reportingLimitBasis,
  volatileBasis,
  looseDensityBasis,
  tappedDensityBasis,
  compressibilityBasis,
  recoveryBasis,
  resiliencyBasis,
  conductivityBasis,
  creepBasis,
  expansionVolumeBasis,
  foilDensityBasis,
  arealMassBasis,
  leakBasis,
  porosityBasis,
  fourPointBasis,
  vanDerPauwBasis,
  stripBasis,
  conductivityOfFoilBasis,
  rollLengthBasis,
  rollWidthBasis,
  retainedBasis,
  sieveLossBasis,
  sieveSizeBasis,
  tensileBasis,
  forcePerWidthBasis,
  thermalBasis,
  thermalEstimateBasis,
  taperAlongBasis,
  taperAcrossBasis,
  soakKeptBasis,
  expansionRatioBasis,
  ...Object.values(meanBases)
] as const

export type OpenBasis = (typeof openBases)[number]
/** A formula as a model's file states it. */
export type OpenFormula = OpenBasis['formula']
/** Where a formula comes from, as a model's file states it. */
export type OpenSource = OpenBasis['source']

const formulas: ReadonlySet<string> = new Set(openBases.map(({ formula }) => formula))
const sources: ReadonlySet<string> = new Set(openBases.map(({ source }) => source))

export const isOpenFormula = (text: string): text is OpenFormula => formulas.has(text)
export const isOpenSource = (text: string): text is OpenSource => sources.has(text)
