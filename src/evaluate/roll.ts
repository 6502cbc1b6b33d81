/** A roll of foil: its length piece by piece, its width, and its splices. */

import { propagate } from '../metrology/estimate.ts'
import { placesOf, roundToPlaces } from '../metrology/rounding.ts'
import type { Reading } from '../metrology/written.ts'
import { rollLength, rollLengthBasis, rollWidthBasis } from '../physics/roll.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, read } from './bench.ts'
import { blockResult, openBlock } from './blocks.ts'
import { instrumentsFor, type MethodOf } from './flake.ts'
import { singleResult } from './result.ts'
import type { Remark, Result } from './types.ts'

export function rollLengthResult(bench: Bench, { tests }: Foil, methodOf: MethodOf) {
  const test = tests?.roll
  if (!test) return undefined
  const session = openBlock(bench, test, 'roll', 'roll-length', methodOf)
  const pieces = Object.fromEntries(
    test.pieces_m.map((piece, index) => [
      `piece${index + 1}_m`,
      read(session, piece, 'm', 'length', `roll, piece ${index + 1}`)
    ])
  )
  const roles = Object.fromEntries(Object.keys(pieces).map(name => [name, 'length' as const]))
  const result = singleResult(
    session,
    {
      quantity: 'rollLength_m',
      basis: rollLengthBasis,
      deviation: test.deviation,
      instrumentOf: instrumentsFor(session, roles)
    },
    () => rollLength(pieces)
  )
  return result && { ...result, remark: spliced(test.pieces_m) }
}

/** Where the pieces meet, and the longest of them. */
function spliced(pieces: readonly Reading[]): Remark {
  const places = Math.max(...pieces.map(({ decimal }) => placesOf(decimal)))
  const text = (length_m: number) => `${roundToPlaces(length_m, places)} m`
  const lengths = pieces.map(({ value }) => value)
  const at = lengths
    .slice(0, -1)
    .map((_, index) => text(lengths.slice(0, index + 1).reduce((sum, length) => sum + length, 0)))
  return { is: 'spliced', at, longest: text(Math.max(...lengths)) }
}

export function rollWidthResult(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf
): Result | undefined {
  const test = tests?.roll
  return blockResult(
    bench,
    methodOf,
    test && { ...test, readings: test.widths_mm },
    {
      quantity: 'rollWidth_mm',
      basis: rollWidthBasis,
      block: 'roll',
      columns: ['Width'],
      written: ({ written }) => [written],
      roles: { width_mm: 'width' }
    },
    (take, width) => propagate(x => x.width_mm, { width_mm: take(width, 'mm', 'width', 'width') })
  )
}
