/** Heat along a foil: measured by its diffusivity, or estimated from a strip's conductivity. */

import { measured, rectangular } from '../metrology/estimate.ts'
import {
  LORENZ_RANGE,
  thermalBasis,
  thermalConductivity,
  thermalEstimate,
  thermalEstimateBasis
} from '../physics/thermal-conductivity.ts'
import type { Reading } from '../metrology/written.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, report } from './bench.ts'
import { blockResult, openBlock } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import { singleResult } from './result.ts'
import { asStated } from './steps.ts'
import type { Result, Results } from './types.ts'

/** What the record states beside the readings, by its last digit. */
const statedOf = (
  { lot }: Bench,
  reading: Reading,
  what: 'heat capacity' | 'temperature of the estimate'
) => asStated(reading, `${lot} ${what}`, { is: 'stated', lot, what })

/** Density is the lot's own; direction and temperature stand beside the figure. */
export function thermalResult(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf,
  { foilDensity_g_per_cm3: density }: Results
): Result | undefined {
  const test = tests?.thermalConductivity
  if (!test) return undefined
  if (!density) {
    report(bench, ['tests', 'thermalConductivity'], 'MISSING_FIELD', [
      'needs the foil density of the lot',
      "add 'sheets:' with their masses, sizes and thickness"
    ])
    return undefined
  }
  const heatCapacity_J_per_gK = statedOf(bench, test.heatCapacity_J_per_gK, 'heat capacity')
  const result = blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'thermalConductivity_W_per_mK',
      basis: thermalBasis,
      block: 'thermalConductivity',
      columns: ['Diffusivity'],
      written: ({ diffusivity_mm2_per_s }) => [diffusivity_mm2_per_s.written],
      roles: { diffusivity_mm2_per_s: 'diffusivity' },
      notes: [{ is: 'heat capacity', written: test.heatCapacity_J_per_gK.written }]
    },
    (take, { diffusivity_mm2_per_s: alpha }) =>
      thermalConductivity({
        diffusivity_mm2_per_s: take(alpha, 'mm²/s', 'diffusivity', 'diffusivity'),
        foilDensity_g_per_cm3: density.estimate,
        heatCapacity_J_per_gK
      })
  )
  return (
    result && {
      ...result,
      remark: { is: 'heat flowed', direction: test.direction, at: test.at_C.written }
    }
  )
}

/** Worked out where the record asks for it alone, and told as what it is. */
export function thermalEstimateResult(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf,
  { foilConductivity_kS_per_m: conductivity }: Results
): Result | undefined {
  const test = tests?.stripResistance
  const at_C = test?.thermalEstimateAt_C
  if (!test || !at_C || !conductivity) return undefined
  const [least, most] = LORENZ_RANGE
  const result = singleResult(
    openBlock(bench, test, 'stripResistance', 'thermal-conductivity-estimate', methodOf),
    {
      quantity: 'thermalEstimate_W_per_mK',
      basis: thermalEstimateBasis,
      notes: [{ is: 'bounds of L' }]
    },
    () =>
      thermalEstimate({
        conductivity_kS_per_m: conductivity.estimate,
        temperature_C: statedOf(bench, at_C, 'temperature of the estimate'),
        lorenz: measured(
          (least + most) / 2,
          rectangular((most - least) / 2),
          'L of graphite foil',
          Infinity,
          {
            is: 'known',
            what: 'L of graphite foil'
          }
        )
      })
  )
  return (
    result && {
      ...result,
      n: conductivity.n,
      remark: { is: 'heat estimated', direction: test.direction, at: at_C.written }
    }
  )
}
