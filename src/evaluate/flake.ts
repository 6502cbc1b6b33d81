/** Product tests of a flake lot: the inputs each model takes from the record. */

import { ashDry, ashBasis } from '../chemistry/ash.ts'
import { moisture, moistureBasis } from '../chemistry/drying.ts'
import {
  devolatilisedCarbon,
  devolatilisedCarbonBasis,
  fixedCarbon,
  fixedCarbonBasis
} from '../chemistry/fixed-carbon.ts'
import { volatileDry, volatileBasis } from '../chemistry/volatile.ts'
import {
  type Computed,
  type Estimate,
  exact,
  measured,
  rectangular,
  uncertaintyOf
} from '../metrology/estimate.ts'
import { expansionVolume, expansionVolumeBasis } from '../physics/expansion-volume.ts'
import { expansionRatio, expansionRatioBasis } from '../physics/worms.ts'
import type { Reading } from '../metrology/written.ts'
import type { Batch } from '../records/types.ts'
import type { FlakeTests } from '../records/schemas/tests.ts'
import { meanBases } from './bases.ts'
import { type Bench, openSession, read, report, type Session } from './bench.ts'
import type { Note } from './notes.ts'
import { type Account, estimateOf, repeatedResult, singleResult } from './result.ts'
import type { Result, Results } from './types.ts'

/** Method the grade names for a quantity of this lot. */
export type MethodOf = (key: string) => string | undefined

type Test<Key extends keyof FlakeTests> = NonNullable<FlakeTests[Key]>

/** Start a test's readings by its own method, or the one its grade names. */
export function openTest<Key extends keyof FlakeTests>(
  bench: Bench,
  test: Test<Key>,
  field: Key & string,
  key: string,
  methodOf: MethodOf
): Session {
  const { tested, method, instruments } = test
  return openSession(bench, tested, ['tests', field], method ?? methodOf(key), instruments)
}

export function expansionVolumeResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf
): Result | undefined {
  const test = tests?.expansionVolume
  if (!test) return undefined
  const session = openTest(bench, test, 'expansionVolume', 'expansion-volume', methodOf)
  const account: Account = {
    quantity: 'expansionVolume_mL_per_g',
    basis: expansionVolumeBasis,
    written: {
      columns: ['Mass', 'Volume'],
      rows: test.readings.map(({ mass_g, volume_mL }) => [mass_g.written, volume_mL.written])
    },
    instrumentOf: instrumentsFor(session, { mass_g: 'mass', volume_mL: 'volume' }),
    deviation: test.deviation
  }
  return repeatedResult(session, test.readings, account, (reading, what) =>
    expansionVolume({
      mass_g: read(session, reading.mass_g, 'g', 'mass', `${what} mass`),
      volume_mL: read(session, reading.volume_mL, 'mL', 'volume', `${what} volume`)
    })
  )
}

/** Volumes, not millilitres a gram; it needs the flake's loose bulk density. */
export function expansionRatioResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  sofar: Results
): Result | undefined {
  const test = tests?.expansionVolume
  const volume = sofar.expansionVolume_mL_per_g
  const density = looseDensityFor(bench, test, sofar)
  if (!test || !volume || !density) return undefined
  const session = openTest(bench, test, 'expansionVolume', 'expansion-ratio', methodOf)
  const { bulkDensity_g_per_mL, note } = density
  const account: Account = {
    quantity: 'expansionRatio',
    basis: expansionRatioBasis,
    notes: [note]
  }
  const result = singleResult(session, account, () =>
    expansionRatio({ expansionVolume_mL_per_g: volume.estimate, bulkDensity_g_per_mL })
  )
  return result && { ...result, n: volume.n }
}

/** The lot's own loose density where it was tested, else the one written beside the expansion. */
function looseDensityFor(
  bench: Bench,
  test: Test<'expansionVolume'> | undefined,
  { looseDensity_g_per_mL: tested }: Results
): { bulkDensity_g_per_mL: Estimate; note: Note } | undefined {
  if (tested)
    return {
      bulkDensity_g_per_mL: tested.estimate,
      note: { is: 'bulk density tested' }
    }
  const density = test?.bulkDensity_g_per_mL
  return (
    density && {
      bulkDensity_g_per_mL: measured(
        density.value,
        rectangular(density.resolution),
        `${bench.lot} bulk density`,
        Infinity,
        { is: 'stated', lot: bench.lot, what: 'bulk density' }
      ),
      note: { is: 'bulk density recorded', written: density.written }
    }
  )
}

export function slurryPHResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf
): Result | undefined {
  const test = tests?.slurryPh
  if (!test) return undefined
  const session = openTest(bench, test, 'slurryPh', 'slurry-ph', methodOf)
  const account: Account = {
    quantity: 'slurryPH',
    basis: meanBases.pH,
    written: { columns: ['pH'], rows: test.readings.map(({ written }) => [written]) },
    instrumentOf: instrumentsFor(session, { pH: 'ph' }),
    deviation: test.deviation
  }
  return repeatedResult(session, test.readings, account, (reading, what) => {
    const pH = read(session, reading, '1', 'ph', what)
    return {
      ...pH,
      inputs: [{ input: 'pH', value: pH.value, u: uncertaintyOf(pH), sensitivity: 1 }]
    }
  })
}

/** A dish weighed empty, before and after, as three readings on one balance. */
function weighed(
  session: Session,
  reading: { dish_g: Reading; before_g: Reading; after_g: Reading },
  what: string
): { dish_g: Estimate; before_g: Estimate; after_g: Estimate } {
  const weigh = (mass: Reading, state: string) =>
    read(session, mass, 'g', 'mass', `${what} ${state}`)
  return {
    dish_g: weigh(reading.dish_g, 'dish'),
    before_g: weigh(reading.before_g, 'before'),
    after_g: weigh(reading.after_g, 'after')
  }
}

type WeighedKey = 'moisture' | 'volatile' | 'ash'

function weighedResult(
  bench: Bench,
  test: Test<WeighedKey> | undefined,
  key: WeighedKey,
  methodOf: MethodOf,
  account: Account,
  model: (inputs: ReturnType<typeof weighed>) => Computed
): Result | undefined {
  if (!test) return undefined
  const session = openTest(bench, test, key, key, methodOf)
  const full: Account = {
    ...account,
    written: {
      columns: ['Dish', 'Before', 'After'],
      rows: test.readings.map(({ dish_g, before_g, after_g }) => [
        dish_g.written,
        before_g.written,
        after_g.written
      ])
    },
    instrumentOf: instrumentsFor(session, { dish_g: 'mass', before_g: 'mass', after_g: 'mass' }),
    deviation: test.deviation
  }
  return repeatedResult(session, test.readings, full, (reading, what) =>
    model(weighed(session, reading, what))
  )
}

export const moistureResult = (bench: Bench, { tests }: Batch, methodOf: MethodOf) =>
  weighedResult(
    bench,
    tests?.moisture,
    'moisture',
    methodOf,
    { quantity: 'moisture_percent', basis: moistureBasis },
    moisture
  )

export function volatileResult(bench: Bench, { tests }: Batch, methodOf: MethodOf, sofar: Results) {
  const water = moistureFor(bench, tests?.volatile, 'volatile', sofar)
  return water
    ? weighedResult(
        bench,
        tests?.volatile,
        'volatile',
        methodOf,
        { quantity: 'volatile_percent', basis: volatileBasis },
        inputs => volatileDry({ ...inputs, moisture_percent: water })
      )
    : undefined
}

export function ashResult(bench: Bench, { tests }: Batch, methodOf: MethodOf, sofar: Results) {
  const water = moistureFor(bench, tests?.ash, 'ash', sofar)
  return water
    ? weighedResult(
        bench,
        tests?.ash,
        'ash',
        methodOf,
        { quantity: 'ash_percent', basis: ashBasis, notes: [{ is: 'scatter of ash' }] },
        inputs => ashDry({ ...inputs, moisture_percent: water })
      )
    : undefined
}

/** A dry basis needs the moisture of the same lot, unless the sample was dried first. */
function moistureFor(
  bench: Bench,
  test: { sample?: 'dried' | 'as received' | undefined } | undefined,
  key: string,
  sofar: Results
): Estimate | undefined {
  if (!test) return undefined
  if (test.sample === 'dried') return exact(0)
  const water = estimateOf(sofar, 'moisture_percent')
  if (!water)
    report(bench, ['tests', key], 'MISSING_FIELD', [
      'is on dry basis and needs the moisture of the lot',
      "add the moisture test, or write 'sample: dried' if the sample was dried first"
    ])
  return water
}

export function fixedCarbonResult(bench: Bench, batch: Batch, methodOf: MethodOf, sofar: Results) {
  return byDifference(
    bench,
    batch,
    methodOf,
    sofar,
    'fixedCarbon_percent',
    'fixed-carbon',
    inputs => fixedCarbon(inputs)
  )
}

export function devolatilisedCarbonResult(
  bench: Bench,
  batch: Batch,
  methodOf: MethodOf,
  sofar: Results
) {
  return byDifference(
    bench,
    batch,
    methodOf,
    sofar,
    'devolatilisedCarbon_percent',
    'devolatilised-carbon',
    inputs => devolatilisedCarbon(inputs)
  )
}

function byDifference(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  sofar: Results,
  quantity: 'fixedCarbon_percent' | 'devolatilisedCarbon_percent',
  key: string,
  model: (inputs: { ash_percent: Estimate; volatile_percent: Estimate }) => Computed
): Result | undefined {
  const ash_percent = estimateOf(sofar, 'ash_percent')
  const volatile_percent = estimateOf(sofar, 'volatile_percent')
  if (!ash_percent || !volatile_percent || !tests?.ash || !tests.volatile) return undefined
  const day = tests.ash.tested > tests.volatile.tested ? tests.ash.tested : tests.volatile.tested
  const session = openSession(bench, day, ['tests', 'ash'], methodOf(key), undefined)
  const basis = quantity === 'fixedCarbon_percent' ? fixedCarbonBasis : devolatilisedCarbonBasis
  return singleResult(session, { quantity, basis }, () => model({ ash_percent, volatile_percent }))
}

/** Which instrument each input of a model was read on, for the working. */
export function instrumentsFor(
  { instruments }: Session,
  roleOf: Readonly<Record<string, keyof Session['instruments']>>
): Record<string, string> {
  const named: Record<string, string> = {}
  for (const [input, role] of Object.entries(roleOf)) {
    const id = instruments[role]
    if (id !== undefined) named[input] = id
  }
  return named
}
