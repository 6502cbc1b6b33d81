/** Further tests of a flake lot, each a block of its record. */

import { bulkDensity, looseDensityBasis, tappedDensityBasis } from '../physics/bulk-density.ts'
import type { Batch } from '../records/types.ts'
import type { Bench } from './bench.ts'
import { blockResult } from './blocks.ts'
import type { MethodOf } from './flake.ts'

type Density = 'looseDensity_g_per_mL' | 'tappedDensity_g_per_mL'

const densities = {
  looseDensity_g_per_mL: { block: 'bulkDensity', basis: looseDensityBasis },
  tappedDensity_g_per_mL: { block: 'tappedDensity', basis: tappedDensityBasis }
} as const

/** Loose and tapped density are read alike; what was done before the reading is all that differs. */
export function bulkDensityResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  quantity: Density
) {
  const { block, basis } = densities[quantity]
  return blockResult(
    bench,
    methodOf,
    tests?.[block],
    {
      quantity,
      basis,
      block,
      columns: ['Mass', 'Volume'],
      written: ({ mass_g, volume_mL }) => [mass_g.written, volume_mL.written],
      roles: { mass_g: 'mass', volume_mL: 'volume' }
    },
    (take, { mass_g, volume_mL }) =>
      bulkDensity({
        mass_g: take(mass_g, 'g', 'mass', 'mass'),
        volume_mL: take(volume_mL, 'mL', 'volume', 'volume')
      })
  )
}
