/** Process figures of batches and furnace runs: never public. */

import {
  carbonRecovery,
  carbonRecoveryBasis,
  lossCeiling,
  lossCeilingBasis,
  massYield,
  massYieldBasis,
  overallYield,
  overallYieldBasis,
  trimYield,
  trimYieldBasis,
  uptakeDry,
  uptakeDryBasis
} from '../chemistry/mass-yield.ts'
import { type Estimate, exact, propagate, rectangular, measured } from '../metrology/estimate.ts'
import { expansionVolume, expansionVolumeBasis } from '../physics/expansion-volume.ts'
import {
  lossOnExpansion,
  lossOnExpansionBasis,
  wormDensity,
  wormDensityBasis
} from '../physics/worms.ts'
import type { Batch, Content, Expansion, Foil } from '../records/types.ts'
import { type Bench, openSession, read, type Session } from './bench.ts'
import { instrumentsFor } from './flake.ts'
import { estimateOf, singleResult } from './result.ts'
import type { EvaluatedLot, Result, Results } from './types.ts'

/** Figures of the lots a lot was made from, by lot number. */
export type Earlier = ReadonlyMap<string, EvaluatedLot>

const openStep = (
  bench: Bench,
  { made, instruments }: Pick<Batch, 'made' | 'instruments'>,
  field: string
): Session => openSession(bench, made, [field], undefined, instruments)

/** Sum of weighed amounts. */
function total(parts: readonly Estimate[]): Estimate {
  const inputs = Object.fromEntries(parts.map((part, index) => [`part${index}`, part]))
  return propagate(x => Object.values(x).reduce((sum, part) => sum + part, 0), inputs)
}

/** Graphite charged, as weighed; undefined for a batch made from earlier ones. */
function graphiteCharged(session: Session, batch: Batch): Estimate | undefined {
  const lines = (batch.charge ?? []).filter(line => line.as === 'graphite')
  if (lines.length === 0) return undefined
  return total(
    lines.map((line, index) =>
      read(session, line.mass_g, 'g', 'mass', `graphite charged, part ${index + 1}`)
    )
  )
}

const productMass = (session: Session, batch: Batch) =>
  read(session, batch.product.mass_g, 'g', 'mass', 'product mass')

export function massYieldResult(bench: Bench, batch: Batch): Result | undefined {
  const session = openStep(bench, batch, 'product')
  const graphite_g = graphiteCharged(session, batch)
  if (!graphite_g) return undefined
  return singleResult(
    session,
    {
      quantity: 'massYield_percent',
      basis: massYieldBasis,
      instrumentOf: instrumentsFor(session, { graphite_g: 'mass', product_g: 'mass' })
    },
    () => massYield({ graphite_g, product_g: productMass(session, batch) })
  )
}

export function uptakeResult(bench: Bench, batch: Batch, sofar: Results): Result | undefined {
  const session = openStep(bench, batch, 'product')
  const graphite_g = graphiteCharged(session, batch)
  if (!graphite_g) return undefined
  const productMoisture_percent = estimateOf(sofar, 'moisture_percent')
  const graphiteMoisture_percent = chargedMoisture(bench.content, batch)
  const assumed = [
    ...(graphiteMoisture_percent ? [] : ['graphite']),
    ...(productMoisture_percent ? [] : ['product'])
  ]
  return singleResult(
    session,
    {
      quantity: 'uptake_percent',
      basis: uptakeDryBasis,
      instrumentOf: instrumentsFor(session, { graphite_g: 'mass', product_g: 'mass' }),
      notes:
        assumed.length > 0
          ? [`No moisture is recorded for the ${assumed.join(' and the ')}: taken as dry.`]
          : []
    },
    () =>
      uptakeDry({
        graphite_g,
        product_g: productMass(session, batch),
        graphiteMoisture_percent: graphiteMoisture_percent ?? exact(0),
        productMoisture_percent: productMoisture_percent ?? exact(0)
      })
  )
}

/** Moisture of the graphite as its supplier states it, with the stated digits as its limits. */
function chargedMoisture(content: Content, batch: Batch): Estimate | undefined {
  const lots = (batch.charge ?? []).filter(line => line.as === 'graphite')
  const [only] = lots
  const moisture = content.materials.get(only?.material ?? '')?.record.moisture_percent
  if (!only || !moisture || lots.some(({ material }) => material !== only.material))
    return undefined
  return measured(moisture.value, rectangular(moisture.resolution), `${only.material} moisture`)
}

export function lossCeilingResult(bench: Bench, batch: Batch, sofar: Results): Result | undefined {
  const uptake_percent = estimateOf(sofar, 'uptake_percent')
  // Product lost on the way can leave less than went in: there is no ceiling to speak of then.
  if (!uptake_percent || uptake_percent.value < 0) return undefined
  return singleResult(
    openStep(bench, batch, 'product'),
    { quantity: 'lossCeiling_percent', basis: lossCeilingBasis },
    () => lossCeiling({ uptake_percent })
  )
}

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
      instrumentOf: instrumentsFor(session, { massIn_g: 'mass', massOut_g: 'mass' })
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

/** Yield of the batches a run was fed from, weighted by what each gave; looks through blends. */
function feedYield(earlier: Earlier, from: Expansion['from']): Estimate | undefined {
  return weighted(from, ({ lot }) => {
    const batch = earlier.get(lot)
    if (batch?.kind !== 'batch') return undefined
    const blended = batch.entry.record.from
    return batch.process.massYield_percent?.estimate ?? (blended && feedYield(earlier, blended))
  })
}

/** Mean of a figure over the lots used, by mass; undefined where one of them lacks it. */
function weighted(
  uses: readonly { lot: string; mass_g: { value: number } }[],
  figureOf: (use: { lot: string }) => Estimate | undefined
): Estimate | undefined {
  const figures = uses.map(figureOf)
  const mass = uses.reduce((sum, use) => sum + use.mass_g.value, 0)
  if (mass <= 0 || figures.some(figure => figure === undefined)) return undefined
  const inputs = Object.fromEntries(figures.map((figure, index) => [`part${index}`, figure!]))
  return propagate(
    x => uses.reduce((sum, use, index) => sum + (x[`part${index}`]! * use.mass_g.value) / mass, 0),
    inputs
  )
}

export function carbonRecoveryResult(
  bench: Bench,
  run: Expansion,
  sofar: Results,
  earlier: Earlier
): Result | undefined {
  const massYield_percent = feedYield(earlier, run.from)
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
  const session = openSession(bench, foil.made, ['from'], undefined, instruments)
  const saleable_g = saleableMass(session, foil)
  if (!saleable_g) return undefined
  return singleResult(
    session,
    {
      quantity: 'trimYield_percent',
      basis: trimYieldBasis,
      instrumentOf: instrumentsFor(session, { worms_g: 'mass', saleable_g: 'mass' })
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
  const lossOnExpansion_percent = weighted(
    foil.from,
    use => earlier.get(use.lot)?.process.lossOnExpansion_percent?.estimate
  )
  const massYield_percent = weighted(foil.from, ({ lot }) => {
    const run = earlier.get(lot)
    return run?.kind === 'expansion' ? feedYield(earlier, run.entry.record.from) : undefined
  })
  if (!trimYield_percent || !lossOnExpansion_percent || !massYield_percent) return undefined
  return singleResult(
    openStep(bench, foil, 'from'),
    { quantity: 'overallYield_percent', basis: overallYieldBasis },
    () => overallYield({ massYield_percent, lossOnExpansion_percent, trimYield_percent })
  )
}
