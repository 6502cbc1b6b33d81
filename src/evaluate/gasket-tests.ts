/** Foil under a clamping load: what it lets go of, and what gas gets past it. */

import { molarMass_g_per_mol } from '../chemistry/molar-mass.ts'
import { creepBasis, creepRelaxation } from '../physics/creep.ts'
import { leakBasis, leakRate } from '../physics/leak-rate.ts'
import { type FoilTests, leakGases } from '../records/schemas/foil-tests.ts'
import type { Foil } from '../records/types.ts'
import { type Bench, read } from './bench.ts'
import { type BlockPlan, blockResult, openBlock, type Take } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import type { Remark, Result } from './types.ts'
import { asStated } from './steps.ts'

type Creep = NonNullable<FoilTests['creepRelaxation']>
type Leak = NonNullable<FoilTests['gasLeak']>

/** Load, temperature and hours stand beside the figure: without them it says nothing. */
export function creepResult(bench: Bench, { tests }: Foil, methodOf: MethodOf): Result | undefined {
  const test = tests?.creepRelaxation
  if (!test) return undefined
  const result = blockResult(
    bench,
    methodOf,
    test,
    {
      quantity: 'creepRelaxation_percent',
      basis: creepBasis,
      block: 'creepRelaxation',
      columns: ['Stretch when tightened', 'Stretch at the end'],
      written: ({ initial_mm, final_mm }) => [initial_mm.written, final_mm.written],
      roles: { initial_mm: 'length', final_mm: 'length' },
      notes: [{ is: 'bolt and rig' }]
    },
    (take, { initial_mm, final_mm }) =>
      creepRelaxation({
        initial_mm: take(initial_mm, 'mm', 'length', 'tightened'),
        final_mm: take(final_mm, 'mm', 'length', 'end')
      })
  )
  return result && { ...result, remark: creepRemark(test) }
}

const creepRemark = ({ load_kN, stress_MPa, temperature_C, for_h }: Creep): Remark => ({
  is: 'clamped',
  with: [load_kN, stress_MPa].flatMap(one => one?.written ?? []).join(', '),
  time: for_h.written,
  at: temperature_C.written
})

/** Gas, pressure and stress stand beside the figure; volume and ring are the same for every reading. */
export function leakResult(bench: Bench, { tests }: Foil, methodOf: MethodOf): Result | undefined {
  const test = tests?.gasLeak
  if (!test) return undefined
  const session = openBlock(bench, test, 'gasLeak', 'gas-leak', methodOf)
  const shared = {
    volume_mL: read(session, test.volume_mL, 'mL', 'volume', 'closed volume'),
    diameter_mm: read(session, test.diameter_mm, 'mm', 'length', 'mean diameter')
  }
  const gas_g_per_mol = molarMass_g_per_mol(leakGases[test.gas])
  const result = blockResult(bench, methodOf, test, leakPlan(test), (take, one) =>
    leakRate({ ...shared, ...leakReadings(take, one, bench.lot) }, gas_g_per_mol)
  )
  return result && { ...result, remark: leakRemark(test) }
}

const leakPlan = (test: Leak): BlockPlan<Leak['readings'][number]> => ({
  quantity: 'leakRate_mg_per_sm',
  basis: leakBasis,
  block: 'gasLeak',
  columns: [
    'Absolute pressure at the start',
    'at the end',
    'Temperature at the start',
    'at the end',
    'Time'
  ],
  written: one => [
    one.absoluteStart_kPa.written,
    one.absoluteEnd_kPa.written,
    one.temperatureStart_C.written,
    one.temperatureEnd_C.written,
    one.time_min.written
  ],
  roles: {
    absoluteStart_kPa: 'pressure',
    absoluteEnd_kPa: 'pressure',
    temperatureStart_C: 'temperature',
    temperatureEnd_C: 'temperature',
    volume_mL: 'volume',
    diameter_mm: 'length'
  },
  nearNothing: true,
  notes: [
    {
      is: 'closed volume',
      volume: test.volume_mL.written,
      diameter: test.diameter_mm.written
    },
    { is: 'ideal gas' }
  ]
})

const leakReadings = (take: Take, one: Leak['readings'][number], lot: string) => ({
  absoluteStart_kPa: take(one.absoluteStart_kPa, 'kPa', 'pressure', 'pressure at the start'),
  absoluteEnd_kPa: take(one.absoluteEnd_kPa, 'kPa', 'pressure', 'pressure at the end'),
  temperatureStart_C: take(one.temperatureStart_C, '°C', 'temperature', 'at the start'),
  temperatureEnd_C: take(one.temperatureEnd_C, '°C', 'temperature', 'at the end'),
  time_min: asStated(one.time_min, `${lot} gas leak, time of ${one.time_min.written}`, {
    is: 'time of leak',
    lot,
    time: one.time_min.written
  })
})

function leakRemark({ gas, stress_MPa, readings }: Leak): Remark {
  const { absoluteStart_kPa, temperatureStart_C } = readings[0]!
  return {
    is: 'leaked',
    gas,
    pressure: absoluteStart_kPa.written,
    stress: stress_MPa.written,
    at: temperatureStart_C.written
  }
}
