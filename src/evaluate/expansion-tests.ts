/** Expansion under other conditions than the lot's own test: other temperatures, after a soak. */

import { expansionVolume, expansionVolumeBasis } from '../physics/expansion-volume.ts'
import { soakKept, soakKeptBasis } from '../physics/water-soak.ts'
import type { Reading } from '../metrology/written.ts'
import type { QuantityName } from '../quantities.ts'
import type { Batch } from '../records/types.ts'
import type { Bench } from './bench.ts'
import { blockResult, openBlock, type Take, type TestHead } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import { singleResult } from './result.ts'
import type { Result, Results } from './types.ts'

interface Expanded {
  readonly mass_g: Reading
  readonly volume_mL: Reading
}

const volumeOf = (
  bench: Bench,
  methodOf: MethodOf,
  test: TestHead & { readonly readings: readonly Expanded[] },
  block: string,
  quantity: QuantityName
) =>
  blockResult(
    bench,
    methodOf,
    test,
    {
      quantity,
      basis: expansionVolumeBasis,
      alike: true,
      block,
      columns: ['Mass', 'Volume'],
      written: ({ mass_g, volume_mL }) => [mass_g.written, volume_mL.written],
      roles: { mass_g: 'mass', volume_mL: 'volume' }
    },
    (take: Take, { mass_g, volume_mL }: Expanded) =>
      expansionVolume({
        mass_g: take(mass_g, 'g', 'mass', 'mass'),
        volume_mL: take(volume_mL, 'mL', 'volume', 'volume')
      })
  )

/** Expansion volume at one furnace temperature; nothing where it was not read there. */
export function expansionAtResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  quantity: QuantityName,
  temperature_C: number
): Result | undefined {
  const test = tests?.expansionCurve
  const readings = (test?.readings ?? []).filter(one => one.temperature_C.value === temperature_C)
  if (!test || readings.length === 0) return undefined
  return volumeOf(bench, methodOf, { ...test, readings }, 'expansionCurve', quantity)
}

export function soakedExpansionResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf
): Result | undefined {
  const test = tests?.waterSoak
  const result = test && volumeOf(bench, methodOf, test, 'waterSoak', 'soakedExpansion_mL_per_g')
  return result && { ...result, remark: soakOf(test) }
}

/** What the soak left of the lot's own expansion volume. */
export function soakKeptResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  { expansionVolume_mL_per_g: before, soakedExpansion_mL_per_g: after }: Results
): Result | undefined {
  const test = tests?.waterSoak
  if (!test || !before || !after) return undefined
  const result = singleResult(
    openBlock(bench, test, 'waterSoak', 'soak-kept', methodOf),
    { quantity: 'soakKept_percent', basis: soakKeptBasis, deviation: test.deviation },
    () =>
      soakKept({
        soaked_mL_per_g: after.estimate,
        expansionVolume_mL_per_g: before.estimate
      })
  )
  return result && { ...result, n: after.n, remark: soakOf(test) }
}

const soakOf = ({ for_h, at_C }: { for_h: Reading; at_C: Reading }) =>
  ({ is: 'soaked', time: for_h.written, at: at_C.written }) as const
