/** Leaches of flake and foil: one model, whatever is looked for in the extract. */

import { leached, leachedBasis } from '../chemistry/leached.ts'
import { exact } from '../metrology/estimate.ts'
import type { Reading } from '../metrology/written.ts'
import { quantities, type QuantityName } from '../quantities.ts'
import { type Bench, read } from './bench.ts'
import { blockResult, openBlock, type TestHead } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import type { Result } from './types.ts'

interface Leach extends TestHead {
  readonly extract_mL: Reading
  readonly blank_mg_per_L?: Reading | undefined
  readonly readings: readonly {
    readonly mass_g: Reading
    readonly concentration_mg_per_L: Reading
  }[]
}

/** Readings share the extract's volume and the blank, and err together in them. */
export function leachResult(
  bench: Bench,
  methodOf: MethodOf,
  test: Leach | undefined,
  block: string,
  quantity: QuantityName
): Result | undefined {
  if (!test) return undefined
  const { key } = quantities[quantity]
  const session = openBlock(bench, test, block, key, methodOf)
  const { extract_mL, blank_mg_per_L: blank } = test
  const shared = {
    extract_mL: read(session, extract_mL, 'mL', 'volume', `${key}, extract`),
    blank_mg_per_L: blank ? read(session, blank, 'mg/L', 'photometer', `${key}, blank`) : exact(0)
  }
  return blockResult(
    bench,
    methodOf,
    test,
    {
      quantity,
      basis: leachedBasis,
      block,
      columns: ['Mass', 'In the extract'],
      written: one => [one.mass_g.written, one.concentration_mg_per_L.written],
      roles: {
        mass_g: 'mass',
        extract_mL: 'volume',
        concentration_mg_per_L: 'photometer',
        blank_mg_per_L: 'photometer'
      },
      nearNothing: true,
      notes: [
        { is: 'leached with', written: extract_mL.written },
        blank ? { is: 'blank', written: blank.written } : { is: 'no blank read' }
      ]
    },
    (take, one) =>
      leached({
        ...shared,
        mass_g: take(one.mass_g, 'g', 'mass', 'mass'),
        concentration_mg_per_L: take(one.concentration_mg_per_L, 'mg/L', 'photometer', 'reading')
      })
  )
}
