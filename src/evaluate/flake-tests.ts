/** Further tests of a flake lot, each a block of its record. */

import { exact, propagate } from '../metrology/estimate.ts'
import { bulkDensity, looseDensityBasis, tappedDensityBasis } from '../physics/bulk-density.ts'
import { conductivityAt25, conductivityBasis } from '../physics/conductivity.ts'
import type { Batch } from '../records/types.ts'
import { meanBases } from './bases.ts'
import { type Bench, read } from './bench.ts'
import { blockResult, openBlock } from './blocks.ts'
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

export function conductivityResult(bench: Bench, { tests }: Batch, methodOf: MethodOf) {
  const test = tests?.conductivity
  if (!test) return undefined
  const session = openBlock(bench, test, 'conductivity', 'conductivity', methodOf)
  const { water_uS_per_cm: water } = test
  const waterRead = water
    ? read(session, water, 'µS/cm', 'conductivity', 'conductivity of the water')
    : exact(0)
  return blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'conductivity_uS_per_cm',
      basis: conductivityBasis,
      block: 'conductivity',
      columns: ['Conductivity', 'Temperature'],
      written: one => [one.conductivity_uS_per_cm.written, one.temperature_C.written],
      roles: {
        conductivity_uS_per_cm: 'conductivity',
        water_uS_per_cm: 'conductivity',
        temperature_C: 'temperature'
      },
      notes: [water ? { is: 'water', written: water.written } : { is: 'water not read' }]
    },
    (take, one) =>
      conductivityAt25({
        conductivity_uS_per_cm: take(one.conductivity_uS_per_cm, 'µS/cm', 'conductivity', 'meter'),
        water_uS_per_cm: waterRead,
        temperature_C: take(one.temperature_C, '°C', 'temperature', 'temperature')
      })
  )
}

/** No model: an onset is read. Its definition and heating rate are part of the figure. */
export function onsetResult(bench: Bench, { tests }: Batch, methodOf: MethodOf) {
  const test = tests?.onset
  if (!test) return undefined
  const { definition, heatingRate_K_per_min: rate } = test
  const result = blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'onset_C',
      basis: meanBases.onset,
      block: 'onset',
      columns: ['Temperature'],
      written: one => [one.temperature_C.written],
      roles: { temperature_C: 'temperature' }
    },
    (take, one) => {
      const temperature_C = take(one.temperature_C, '°C', 'temperature', 'temperature')
      return propagate(x => x.temperature_C, { temperature_C })
    }
  )
  const remark = {
    is: 'defined',
    as: definition,
    ...(rate ? { rate: rate.written } : {})
  } as const
  return result && { ...result, remark }
}
