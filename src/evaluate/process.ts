/** Process figures of furnace runs and of pressing foil: never public. */

import {
  carbonRecovery,
  carbonRecoveryBasis,
  overallYield,
  overallYieldBasis,
  trimYield,
  trimYieldBasis
} from '../chemistry/mass-yield.ts'
import { type Estimate, propagate } from '../metrology/estimate.ts'
import { expansionVolume, expansionVolumeBasis } from '../physics/expansion-volume.ts'
import {
  lossOnExpansion,
  lossOnExpansionBasis,
  wormDensity,
  wormDensityBasis
} from '../physics/worms.ts'
import type { FieldPath } from '../problem.ts'
import type { Expansion, Foil } from '../records/types.ts'
import { type Bench, openSession, read, type Session } from './bench.ts'
import { instrumentsFor } from './flake.ts'
import { estimateOf, singleResult } from './result.ts'
import { openStep, total } from './steps.ts'
import type { EvaluatedLot, Result, Results } from './types.ts'

/** Figures of the lots a lot was made from, by lot number. */
export type Earlier = ReadonlyMap<string, EvaluatedLot>

function massPutIn(session: Session, { from }: Pick<Expansion, 'from'>): Estimate {
  return total(
    from.map((use, index) => read(session, use.mass_g, 'g', 'mass', `mass in, part ${index + 1}`))
  )
}

const wormMass = (session: Session, run: Expansion) =>
  read(session, run.worms.mass_g, 'g', 'mass', 'worm mass')

export function lossOnExpansionResult(bench: Bench, run: Expansion): Result | undefined {
  const session = openStep(bench, run, 'worms')
  return singleResult(
    session,
    {
      quantity: 'lossOnExpansion_percent',
      basis: lossOnExpansionBasis,
      instrumentOf: instrumentsFor(session, { massIn_g: 'mass', massOut_g: 'mass' }),
      fieldOf: { massIn_g: ['from'], massOut_g: ['worms', 'mass_g'] }
    },
    () => lossOnExpansion({ massIn_g: massPutIn(session, run), massOut_g: wormMass(session, run) })
  )
}

export function wormDensityResult(bench: Bench, run: Expansion): Result | undefined {
  const session = openStep(bench, run, 'worms')
  const { volume_mL } = run.worms
  if (!volume_mL) return undefined
  return singleResult(
    session,
    {
      quantity: 'wormDensity_g_per_L',
      basis: wormDensityBasis,
      instrumentOf: instrumentsFor(session, { mass_g: 'mass', volume_mL: 'volume' })
    },
    () =>
      wormDensity({
        mass_g: wormMass(session, run),
        volume_mL: read(session, volume_mL, 'mL', 'volume', 'worm volume')
      })
  )
}

export function runExpansionVolumeResult(bench: Bench, run: Expansion): Result | undefined {
  const session = openStep(bench, run, 'worms')
  const { volume_mL } = run.worms
  if (!volume_mL) return undefined
  return singleResult(
    session,
    {
      quantity: 'runExpansionVolume_mL_per_g',
      basis: expansionVolumeBasis,
      instrumentOf: instrumentsFor(session, { mass_g: 'mass', volume_mL: 'volume' })
    },
    () =>
      expansionVolume({
        mass_g: massPutIn(session, run),
        volume_mL: read(session, volume_mL, 'mL', 'volume', 'worm volume')
      })
  )
}

/** What later lots reckon on with; of a blend without a yield of its own, that of its parts. */
export function yieldSoFar(
  lot: EvaluatedLot,
  earlier: Earlier
): Pick<EvaluatedLot, 'yieldSoFar_percent'> {
  const { massYield_percent, carbonRecovery_percent } = lot.process
  if (lot.kind === 'foil') return {}
  if (lot.kind === 'expansion') return { yieldSoFar_percent: carbonRecovery_percent?.estimate }
  const { from } = lot.entry.record
  return {
    yieldSoFar_percent: massYield_percent?.estimate ?? (from && joinedYield(from, earlier, 'batch'))
  }
}

/**
 * The yield of the lots used, taken together: their mass over the sum of what each of them came from.
 * Undefined where one of them lacks it, or is of another kind.
 */
function joinedYield(
  uses: Expansion['from'],
  earlier: Earlier,
  kind: EvaluatedLot['kind']
): Estimate | undefined {
  const yields = uses.flatMap(use => {
    const lot = earlier.get(use.lot)
    return (lot?.kind === kind && lot.yieldSoFar_percent) || []
  })
  if (yields.length < uses.length) return undefined
  const mass_g = uses.reduce((sum, use) => sum + use.mass_g.value, 0)
  const inputs = Object.fromEntries(yields.map((figure, index) => [`part${index}`, figure]))
  return propagate(
    x => mass_g / uses.reduce((sum, use, index) => sum + use.mass_g.value / x[`part${index}`]!, 0),
    inputs
  )
}

export function carbonRecoveryResult(
  bench: Bench,
  run: Expansion,
  sofar: Results,
  earlier: Earlier
): Result | undefined {
  const massYield_percent = joinedYield(run.from, earlier, 'batch')
  const lossOnExpansion_percent = estimateOf(sofar, 'lossOnExpansion_percent')
  if (!massYield_percent || !lossOnExpansion_percent) return undefined
  return singleResult(
    openStep(bench, run, 'worms'),
    { quantity: 'carbonRecovery_percent', basis: carbonRecoveryBasis },
    () => carbonRecovery({ massYield_percent, lossOnExpansion_percent })
  )
}

/** Saleable foil: as weighed together, else the sheets' sum. */
function saleableMass(session: Session, foil: Foil): Estimate | undefined {
  if (foil.saleable_g) return read(session, foil.saleable_g, 'g', 'mass', 'saleable mass')
  const sheets = foil.sheets ?? []
  if (sheets.length === 0) return undefined
  return total(
    sheets.map(sheet => read(session, sheet.mass_g, 'g', 'mass', `sheet ${sheet.id} mass`))
  )
}

export function trimYieldResult(bench: Bench, foil: Foil): Result | undefined {
  const instruments = { ...foil.instruments, ...foil.measured?.instruments }
  const field: FieldPath = foil.saleable_g ? ['saleable_g'] : ['sheets']
  const session = openSession(bench, foil.made, field, undefined, instruments)
  const saleable_g = saleableMass(session, foil)
  if (!saleable_g) return undefined
  return singleResult(
    session,
    {
      quantity: 'trimYield_percent',
      basis: trimYieldBasis,
      instrumentOf: instrumentsFor(session, { worms_g: 'mass', saleable_g: 'mass' }),
      fieldOf: { worms_g: ['from'], saleable_g: field }
    },
    () => trimYield({ worms_g: massPutIn(session, foil), saleable_g })
  )
}

export function overallYieldResult(
  bench: Bench,
  foil: Foil,
  sofar: Results,
  earlier: Earlier
): Result | undefined {
  const trimYield_percent = estimateOf(sofar, 'trimYield_percent')
  const carbonRecovery_percent = joinedYield(foil.from, earlier, 'expansion')
  if (!trimYield_percent || !carbonRecovery_percent) return undefined
  return singleResult(
    openStep(bench, foil, 'from'),
    { quantity: 'overallYield_percent', basis: overallYieldBasis },
    () => overallYield({ carbonRecovery_percent, trimYield_percent })
  )
}
