/** Tests of pieces cut from a foil lot, each a block of its record. */

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
