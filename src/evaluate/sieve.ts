/** Sieve runs of a flake lot: what each sieve retained, the loss, and sizes in between. */

import { exact } from '../metrology/estimate.ts'
import {
  retainedBasis,
  retainedOn,
  type SieveRun,
  sieveLoss,
  sieveLossBasis,
  sieveSizeBasis,
  sizeAt
} from '../physics/sieve-analysis.ts'
import type { QuantityName } from '../quantities.ts'
import type { FlakeTests } from '../records/schemas/tests.ts'
import type { Batch } from '../records/types.ts'
import { type Bench, report } from './bench.ts'
import { type BlockPlan, blockResult, type Take } from './blocks.ts'
import type { MethodOf } from './flake.ts'
import type { OpenBasis } from './bases.ts'
import { attempt } from './result.ts'

type SieveTest = NonNullable<FlakeTests['sieve']>
type Run = SieveTest['readings'][number]

/** Loss beyond which a run is in doubt, where the test names none: ISO 2591-1 (from memory). */
const MOST_LOSS = 1

const planOf = (test: SieveTest, quantity: QuantityName, basis: OpenBasis): BlockPlan<Run> => ({
  quantity,
  basis,
  block: 'sieve',
  columns: ['Charged', ...test.sieves, 'Pan'],
  written: ({ charged_g, retained_g, pan_g }) => [
    charged_g.written,
    ...retained_g.map(({ written }) => written),
    pan_g.written
  ],
  roles: Object.fromEntries(
    ['charged_g', 'pan_g', ...test.sieves.map(one => `on ${one.aperture_um} µm_g`)].map(input => [
      input,
      'mass'
    ])
  ),
  notes: [{ is: 'retained', sieve: test.sieves[0]!.number }]
})

const runFrom = (take: Take, { charged_g, retained_g, pan_g }: Run): SieveRun => ({
  charged_g: take(charged_g, 'g', 'mass', 'charged'),
  retained_g: retained_g.map((mass, index) => take(mass, 'g', 'mass', `sieve ${index + 1}`)),
  pan_g: take(pan_g, 'g', 'mass', 'pan')
})

/** Retained on the sieve of an aperture; nothing where the stack has none of it. */
export function retainedResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  quantity: QuantityName,
  aperture_um: number
) {
  const test = tests?.sieve
  const on = test?.sieves.find(one => one.aperture_um === aperture_um)
  if (!test || !on) return undefined
  return blockResult(bench, methodOf, test, planOf(test, quantity, retainedBasis), (take, run) =>
    retainedOn(runFrom(take, run), test.sieves, on)
  )
}

export function sieveLossResult(bench: Bench, { tests }: Batch, methodOf: MethodOf) {
  const test = tests?.sieve
  if (!test) return undefined
  const plan = { ...planOf(test, 'sieveLoss_percent', sieveLossBasis), nearNothing: true }
  const result = blockResult(bench, methodOf, test, plan, (take, run) =>
    sieveLoss(runFrom(take, run), test.sieves)
  )
  const most = test.mostLoss_percent?.value ?? MOST_LOSS
  for (const [index, { estimate }] of (result?.each ?? []).entries())
    if (estimate.value > most)
      report(bench, ['tests', 'sieve', 'readings', index], 'FAILED_CHECK', [
        `the sieving lost ${Number(estimate.value.toPrecision(3))} % of what was charged, more than the ${most} % it may`,
        'look for what hangs in the meshes, and sieve again'
      ])
  return result
}

/** The size a part passes; nothing where one run or another does not reach it. */
export function sizeResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  quantity: QuantityName,
  passing_percent: number
) {
  const test = tests?.sieve
  if (!test || !isReached(bench, test, passing_percent)) return undefined
  const plan = planOf(test, quantity, sieveSizeBasis)
  return blockResult(bench, methodOf, test, plan, (take, run) =>
    sizeAt(runFrom(take, run), test.sieves, passing_percent)!
  )
}

function isReached(bench: Bench, { readings, sieves }: SieveTest, percent: number): boolean {
  const plain = ({ value }: { value: number }) => exact(value)
  return readings.every(({ charged_g, retained_g, pan_g }, index) => {
    const run = {
      charged_g: plain(charged_g),
      retained_g: retained_g.map(plain),
      pan_g: plain(pan_g)
    }
    // A refusal is told once, by the figures that every run gives.
    const quiet = { ...bench, problems: [] }
    return attempt(quiet, [index], () => sizeAt(run, sieves, percent)) !== undefined
  })
}
