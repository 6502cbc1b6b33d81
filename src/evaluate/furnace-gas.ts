/** Gas of a furnace run: upper bounds for ventilation. Never public. */

import {
  gasBasis,
  gasVolume,
  roomBasis,
  sulfurDioxideBasis,
  sulfurDioxideOfLoss,
  worstInRoom
} from '../chemistry/expansion-gas.ts'
import { exact } from '../metrology/estimate.ts'
import type { Expansion } from '../records/types.ts'
import { type Bench, read } from './bench.ts'
import { estimateOf, singleResult } from './result.ts'
import { openStep, total } from './steps.ts'
import type { Result, Results } from './types.ts'

function flakeAndLoss(bench: Bench, run: Expansion, sofar: Results) {
  const loss_percent = estimateOf(sofar, 'lossOnExpansion_percent')
  const session = openStep(bench, run, 'worms')
  const flake_g = total(
    run.from.map((use, index) =>
      read(session, use.mass_g, 'g', 'mass', `mass in, part ${index + 1}`)
    )
  )
  return loss_percent && { session, inputs: { flake_g, loss_percent } }
}

export function gasBoundResult(bench: Bench, run: Expansion, sofar: Results): Result | undefined {
  const found = flakeAndLoss(bench, run, sofar)
  return (
    found &&
    singleResult(found.session, { quantity: 'gasBound_L', basis: gasBasis }, () =>
      gasVolume(found.inputs)
    )
  )
}

export function sulfurDioxideBoundResult(
  bench: Bench,
  run: Expansion,
  sofar: Results
): Result | undefined {
  const found = flakeAndLoss(bench, run, sofar)
  const basis = { ...sulfurDioxideBasis, formula: 'm(SO2) = m · L · M(SO2) / M(H2SO4)' }
  return (
    found &&
    singleResult(found.session, { quantity: 'sulfurDioxideBound_g', basis }, () =>
      sulfurDioxideOfLoss(found.inputs)
    )
  )
}

/** Needs the room's volume in the producer's record. */
export function sulfurDioxideInRoomResult(
  bench: Bench,
  run: Expansion,
  sofar: Results
): Result | undefined {
  const gas_g = estimateOf(sofar, 'sulfurDioxideBound_g')
  const room = bench.content.producer?.record.room_m3
  if (!gas_g || !room) return undefined
  return singleResult(
    openStep(bench, run, 'worms'),
    {
      quantity: 'sulfurDioxideInRoom_mg_per_m3',
      basis: roomBasis,
      notes: [`Room of ${room.written}, as recorded. Local limits decide, and competent people.`]
    },
    () => worstInRoom({ gas_g, room_m3: exact(room.value) })
  )
}
