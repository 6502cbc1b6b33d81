/** Tests of pieces cut from a foil lot, each a block of its record. */

import { oxidationLoss, oxidationLossBasis } from '../chemistry/oxidation-loss.ts'
import {
  compressibility,
  compressibilityBasis,
  recovery,
  recoveryBasis,
  resiliency,
  resiliencyBasis
} from '../physics/compression.ts'
import {
  forcePerWidth,
  forcePerWidthBasis,
  tensileBasis,
  tensileStrength
} from '../physics/tensile.ts'
import type { FoilTests } from '../records/schemas/foil-tests.ts'
import type { Foil } from '../records/types.ts'
import type { Bench } from './bench.ts'
import { blockResult, type Take } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import type { Result } from './types.ts'

type Pull = NonNullable<FoilTests['tensile']>['readings'][number]

const pulls = {
  tensileAlong_MPa: { direction: 'along', basis: tensileBasis },
  tensileAcross_MPa: { direction: 'across', basis: tensileBasis },
  forceAlong_N_per_mm: { direction: 'along', basis: forcePerWidthBasis },
  forceAcross_N_per_mm: { direction: 'across', basis: forcePerWidthBasis }
} as const

const pullInputs = (take: Take, { force_N, width_mm }: Pull) => ({
  force_N: take(force_N, 'N', 'force', 'force'),
  width_mm: take(width_mm, 'mm', 'length', 'width')
})

/** Strips of one direction; nothing where none was pulled that way. */
export function pullResult(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf,
  quantity: keyof typeof pulls
): Result | undefined {
  const { direction, basis } = pulls[quantity]
  const readings = (tests?.tensile?.readings ?? []).filter(one => one.direction === direction)
  if (!tests?.tensile || readings.length === 0) return undefined
  return blockResult(
    bench,
    methodOf,
    { ...tests.tensile, readings },
    {
      quantity,
      basis,
      alike: true,
      block: 'tensile',
      columns: ['Highest force', 'Width', 'Thickness'],
      written: ({ force_N, width_mm, thickness_mm }) => [
        force_N.written,
        width_mm.written,
        thickness_mm.written
      ],
      roles: {
        force_N: 'force',
        width_mm: 'length',
        ...(basis === tensileBasis ? { thickness_mm: 'thickness' } : {})
      }
    },
    (take, one) =>
      basis === tensileBasis
        ? tensileStrength({
            ...pullInputs(take, one),
            thickness_mm: take(one.thickness_mm, 'mm', 'thickness', 'thickness')
          })
        : forcePerWidth(pullInputs(take, one))
  )
}

const compressions = {
  compressibility_percent: { basis: compressibilityBasis, model: compressibility },
  recovery_percent: { basis: recoveryBasis, model: recovery },
  resiliency_percent: { basis: resiliencyBasis, model: resiliency }
} as const

/** Three figures of the same three thicknesses. */
export function compressionResult(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf,
  quantity: keyof typeof compressions
): Result | undefined {
  const { basis, model } = compressions[quantity]
  return blockResult(
    bench,
    methodOf,
    tests?.compression,
    {
      quantity,
      basis,
      block: 'compression',
      columns: ['Under preload', 'Under total load', 'Unloaded'],
      written: one => [one.preload_mm.written, one.loaded_mm.written, one.recovered_mm.written],
      roles: { preload_mm: 'thickness', loaded_mm: 'thickness', recovered_mm: 'thickness' }
    },
    (take, one) =>
      model({
        preload_mm: take(one.preload_mm, 'mm', 'thickness', 'under preload'),
        loaded_mm: take(one.loaded_mm, 'mm', 'thickness', 'under load'),
        recovered_mm: take(one.recovered_mm, 'mm', 'thickness', 'unloaded')
      })
  )
}

/** Temperature and hours stand beside the figure: without them it says nothing. */
export function oxidationResult(bench: Bench, { tests }: Foil, methodOf: MethodOf) {
  const test = tests?.oxidationLoss
  if (!test) return undefined
  const result = blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'oxidationLoss_percent',
      basis: oxidationLossBasis,
      block: 'oxidationLoss',
      columns: ['Dry', 'At the end'],
      written: ({ dry_g, end_g }) => [dry_g.written, end_g.written],
      roles: { dry_g: 'mass', end_g: 'mass' }
    },
    (take, { dry_g, end_g }) =>
      oxidationLoss({
        dry_g: take(dry_g, 'g', 'mass', 'dry'),
        end_g: take(end_g, 'g', 'mass', 'end')
      })
  )
  return (
    result && {
      ...result,
      remark: { is: 'held' as const, time: test.for_h.written, at: test.temperature_C.written }
    }
  )
}
