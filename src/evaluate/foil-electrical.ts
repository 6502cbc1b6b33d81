/** Electrical tests of pieces cut from a foil lot. */

import {
  conductivityOfFoilBasis,
  foilConductivity,
  fourPointBasis,
  fourPointResistance,
  stripBasis,
  stripResistivity,
  vanDerPauw,
  vanDerPauwBasis
} from '../physics/resistivity.ts'
import type { FoilTests } from '../records/schemas/foil-tests.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, read } from './bench.ts'
import { blockResult, openBlock } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import type { Note } from './notes.ts'
import { singleResult } from './result.ts'
import type { Result, Results } from './types.ts'

type Probed = NonNullable<FoilTests['sheetResistance']>

/** Four points in a line: spacing and disc are the same for every reading, and err together. */
export function sheetResistanceResult(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf
): Result | undefined {
  const test = tests?.sheetResistance
  if (!test) return undefined
  const session = openBlock(bench, test, 'sheetResistance', 'sheet-resistance', methodOf)
  const { spacing_mm, diameter_mm } = test
  const shared = {
    spacing_mm: read(session, spacing_mm, 'mm', 'length', 'probe spacing'),
    ...(diameter_mm
      ? { diameter_mm: read(session, diameter_mm, 'mm', 'length', 'disc diameter') }
      : {})
  }
  return blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'sheetResistance_mOhm',
      basis: fourPointBasis,
      block: 'sheetResistance',
      columns: ['Voltage', 'Current', 'Thickness'],
      written: one => [one.voltage_mV.written, one.current_mA.written, one.thickness_mm.written],
      roles: {
        voltage_mV: 'voltage',
        current_mA: 'current',
        thickness_mm: 'thickness',
        spacing_mm: 'length',
        diameter_mm: 'length'
      },
      notes: probeNotes(test)
    },
    (take, one) =>
      fourPointResistance({
        ...shared,
        voltage_mV: take(one.voltage_mV, 'mV', 'voltage', 'voltage'),
        current_mA: take(one.current_mA, 'mA', 'current', 'current'),
        thickness_mm: take(one.thickness_mm, 'mm', 'thickness', 'thickness')
      })
  )
}

const probeNotes = ({ spacing_mm, diameter_mm }: Probed): Note[] => [
  {
    is: 'points',
    apart: spacing_mm.written,
    ...(diameter_mm ? { disc: diameter_mm.written } : {})
  },
  { is: 'foil taken as alike' }
]

export const vanDerPauwResult = (bench: Bench, { tests }: Foil, methodOf: MethodOf) =>
  blockResult(
    bench,
    methodOf,
    tests?.vanDerPauwResistance,
    {
      quantity: 'vanDerPauw_mOhm',
      basis: vanDerPauwBasis,
      block: 'vanDerPauwResistance',
      columns: ['Along one edge', 'Along the next'],
      written: one => [one.first_mOhm.written, one.second_mOhm.written],
      roles: { first_mOhm: 'resistance', second_mOhm: 'resistance' }
    },
    (take, one) =>
      vanDerPauw({
        first_mOhm: take(one.first_mOhm, 'mΩ', 'resistance', 'first'),
        second_mOhm: take(one.second_mOhm, 'mΩ', 'resistance', 'second')
      })
  )

/** A strip has a direction, and conducts a little better along it: it stands beside the figure. */
export function resistivityResult(bench: Bench, { tests }: Foil, methodOf: MethodOf) {
  const test = tests?.stripResistance
  if (!test) return undefined
  const result = blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'resistivity_uOhmm',
      basis: stripBasis,
      block: 'stripResistance',
      columns: ['Resistance', 'Length', 'Width', 'Thickness'],
      written: one => [
        one.resistance_mOhm.written,
        one.length_mm.written,
        one.width_mm.written,
        one.thickness_mm.written
      ],
      roles: {
        resistance_mOhm: 'resistance',
        length_mm: 'length',
        width_mm: 'length',
        thickness_mm: 'thickness'
      }
    },
    (take, one) =>
      stripResistivity({
        resistance_mOhm: take(one.resistance_mOhm, 'mΩ', 'resistance', 'resistance'),
        length_mm: take(one.length_mm, 'mm', 'length', 'length'),
        width_mm: take(one.width_mm, 'mm', 'length', 'width'),
        thickness_mm: take(one.thickness_mm, 'mm', 'thickness', 'thickness')
      })
  )
  return result && { ...result, remark: { is: 'cut' as const, direction: test.direction } }
}

/** The same measurement as conductivity. */
export function conductivityOfStrip(
  bench: Bench,
  { tests }: Foil,
  methodOf: MethodOf,
  { resistivity_uOhmm: resistivity }: Results
): Result | undefined {
  const test = tests?.stripResistance
  if (!test || !resistivity || resistivity.report) return undefined
  const session = openBlock(bench, test, 'stripResistance', 'electrical-conductivity', methodOf)
  const result = singleResult(
    session,
    {
      quantity: 'foilConductivity_kS_per_m',
      basis: conductivityOfFoilBasis,
      deviation: test.deviation
    },
    () => foilConductivity({ resistivity_uOhmm: resistivity.estimate })
  )
  return (
    result && {
      ...result,
      n: resistivity.n,
      remark: { is: 'cut' as const, direction: test.direction }
    }
  )
}
