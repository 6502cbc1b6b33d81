/** Figures of one flake lot that cannot both be right: told as warnings, the figures stand. */

import { ashScatter_percent } from '../chemistry/ash.ts'
import { molarMass_g_per_mol } from '../chemistry/molar-mass.ts'
import { uncertaintyOf } from '../metrology/estimate.ts'
import { leastConductivity_uS_per_cm } from '../physics/conductivity.ts'
import { type Problem, problemAt } from '../problem.ts'
import { repeatabilityOf } from './bench.ts'
import { excessiveScatter } from './scatter.ts'
import type { EvaluatedBatch } from './types.ts'

/** Standard uncertainties by which honest figures may miss each other. */
const NOISE = 4

/** Every doubt about the figures of one batch. */
export const doubtFlake = (batch: EvaluatedBatch): Problem[] => [
  ...doubtAsh(batch),
  ...doubtTapping(batch),
  ...doubtSulfur(batch),
  ...doubtFreeSulfate(batch),
  ...doubtConductivity(batch),
  ...doubtOnset(batch)
]

const S_PER_SO4 = molarMass_g_per_mol('S') / molarMass_g_per_mol('SO4')

const shown = (value: number) => Number(value.toPrecision(4))

/** Readings of ash further apart than laboratories found, unless the method's own scatter told of it. */
function doubtAsh({ entry, product }: EvaluatedBatch): Problem[] {
  const ash = product.ash_percent
  if (!ash || ash.report) return []
  const values = ash.each.map(({ estimate }) => estimate.value)
  const mean = ash.estimate.value
  const known = { s: ashScatter_percent(mean), df: Infinity, name: 'ASTM C561' }
  const scatter = excessiveScatter(values, known)
  if (!scatter || excessiveScatter(values, repeatabilityOf(ash.method, mean))) return []
  return [
    problemAt(
      entry.at([...ash.field, 'readings']),
      'SCATTERED_READINGS',
      `the readings of ash lie ${shown(scatter.range)} % apart, more than those of ASTM C561's laboratories did (${shown(scatter.most)} %)`,
      'burn to constant mass, and split the sample well: ash sits in single grains'
    )
  ]
}

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

/** Sulfur is part of what was taken up. */
function doubtSulfur({ entry, product, process }: EvaluatedBatch): Problem[] {
  const explained = process.sulfurExplained_percent?.estimate
  const { sulfur_percent: sulfur } = product
  if (!sulfur || !explained || explained.value <= 100 + NOISE * uncertaintyOf(explained)) return []
  return [
    problemAt(
      entry.at(sulfur.field),
      'CONTRADICTION',
      `the sulfur stands for ${shown(explained.value)} % of all that the graphite took up`,
      'check the sulfur and its unit, and the masses of graphite and product'
    )
  ]
}

/** Free sulfate holds part of the sulfur there is. */
function doubtFreeSulfate({ entry, product }: EvaluatedBatch): Problem[] {
  const { sulfur_percent: sulfur, freeSulfate_percent: free } = product
  if (!sulfur || !free) return []
  const freeSulfur = free.estimate.value * S_PER_SO4
  const noise = NOISE * Math.hypot(uncertaintyOf(sulfur.estimate), uncertaintyOf(free.estimate))
  if (freeSulfur <= sulfur.estimate.value + noise) return []
  return [
    problemAt(
      entry.at(free.field),
      'CONTRADICTION',
      `the free sulfate holds ${shown(freeSulfur)} % of sulfur, more than the ${shown(sulfur.estimate.value)} % there is in all`,
      'check both; free sulfate is given as SO4, total sulfur as S'
    )
  ]
}

/** Part of the hydrogen ion's own conductivity that an honest electrode may hide: 0.1 in pH. */
const LEAST_PART = 0.8

/** The hydrogen ion alone conducts: a filtrate of that pH cannot conduct less. */
function doubtConductivity({ entry, product }: EvaluatedBatch): Problem[] {
  const { conductivity_uS_per_cm: conductivity, slurryPH: pH } = product
  if (!conductivity || !pH) return []
  const least = leastConductivity_uS_per_cm(pH.estimate.value)
  const { value } = conductivity.estimate
  if (value + NOISE * uncertaintyOf(conductivity.estimate) >= LEAST_PART * least) return []
  return [
    problemAt(
      entry.at(conductivity.field),
      'CONTRADICTION',
      `a conductivity of ${shown(value)} µS/cm does not go with a pH of ${shown(pH.estimate.value)}, whose hydrogen ion alone gives ${shown(least)} µS/cm`,
      'check the cell and its unit, and the electrode; both belong to one filtrate'
    )
  ]
}

/** Flake dried at or above its own onset has begun to expand. */
function doubtOnset({ entry, product }: EvaluatedBatch): Problem[] {
  const onset = product.onset_C
  if (!onset) return []
  return (entry.record.steps ?? []).flatMap(({ what, temperature_C }, index) =>
    /\bdr(y|ied|ying)\b/iu.test(what) &&
    temperature_C &&
    temperature_C.value >= onset.estimate.value
      ? [
          problemAt(
            entry.at(['steps', index, 'temperature_C']),
            'HOT_DRYING',
            `was dried at ${temperature_C.written}, not below the onset of ${shown(onset.estimate.value)} °C measured on it`,
            'check the temperature and the onset; flake dried so hot may have begun to expand'
          )
        ]
      : []
  )
}
