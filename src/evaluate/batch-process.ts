/** Process figures of a batch: yield, uptake and what it allows to be lost. Never public. */

import {
  lossCeiling,
  lossCeilingBasis,
  massYield,
  massYieldBasis,
  uptakeDry,
  uptakeDryBasis,
  type UptakeInputs,
  uptakeWithoutSalt,
  uptakeWithoutSaltBasis
} from '../chemistry/mass-yield.ts'
import { LEAST_ACID, MOST_ACID, stageIndex, stageIndexBasis } from '../chemistry/stage-index.ts'
import { type Estimate, exact, measured, rectangular } from '../metrology/estimate.ts'
import type { Batch, Records } from '../records/types.ts'
import { type Bench, read, type Session } from './bench.ts'
import { instrumentsFor } from './flake.ts'
import { type Account, estimateOf, type ProcessFigure, singleResult } from './result.ts'
import { asStated, openStep, total } from './steps.ts'
import type { Result, Results } from './types.ts'

/** Graphite charged, as weighed; undefined for a batch made from earlier ones. */
function graphiteCharged(session: Session, batch: Batch): Estimate | undefined {
  const lines = (batch.charge ?? []).filter(line => line.as === 'graphite')
  if (lines.length === 0) return undefined
  return total(
    lines.flatMap(({ mass_g }, index) =>
      mass_g ? read(session, mass_g, 'g', 'mass', `graphite charged, part ${index + 1}`) : []
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
  const masses = dryMasses(session, batch, sofar)
  if (!masses) return undefined
  return singleResult(
    session,
    uptakeAccount(session, masses, 'uptake_percent', uptakeDryBasis),
    () => uptakeDry(masses.inputs)
  )
}

/** The same less the salt of neutralising, where its part of the dry product was found. */
export function uptakeWithoutSaltResult(
  bench: Bench,
  batch: Batch,
  sofar: Results
): Result | undefined {
  const session = openStep(bench, batch, 'product')
  const masses = dryMasses(session, batch, sofar)
  const salt = batch.product.leachableSalt_percent
  if (!masses || !salt) return undefined
  const leachableSalt_percent = asStated(salt, `${bench.lot} leachable salt`)
  return singleResult(
    session,
    uptakeAccount(session, masses, 'uptakeWithoutSalt_percent', uptakeWithoutSaltBasis),
    () => uptakeWithoutSalt({ ...masses.inputs, leachableSalt_percent })
  )
}

/** What both uptakes weigh against each other, and what of it had to be taken as dry. */
interface DryMasses {
  readonly inputs: UptakeInputs
  readonly assumedDry: readonly string[]
}

function dryMasses(session: Session, batch: Batch, sofar: Results): DryMasses | undefined {
  const graphite_g = graphiteCharged(session, batch)
  if (!graphite_g) return undefined
  const productMoisture_percent = estimateOf(sofar, 'moisture_percent')
  const graphiteMoisture_percent = chargedMoisture(session.bench.content, batch)
  return {
    inputs: {
      graphite_g,
      product_g: productMass(session, batch),
      graphiteMoisture_percent: graphiteMoisture_percent ?? exact(0),
      productMoisture_percent: productMoisture_percent ?? exact(0)
    },
    assumedDry: [
      ...(graphiteMoisture_percent ? [] : ['graphite']),
      ...(productMoisture_percent ? [] : ['product'])
    ]
  }
}

const uptakeAccount = (
  session: Session,
  { assumedDry }: DryMasses,
  quantity: ProcessFigure['quantity'],
  basis: ProcessFigure['basis']
): Account => ({
  quantity,
  basis,
  instrumentOf: instrumentsFor(session, { graphite_g: 'mass', product_g: 'mass' }),
  notes:
    assumedDry.length > 0
      ? [`No moisture is recorded for the ${assumedDry.join(' and the ')}: taken as dry.`]
      : []
})

/** Moisture of the graphite as its supplier states it, with the stated digits as its limits. */
function chargedMoisture(content: Records, batch: Batch): Estimate | undefined {
  const lots = (batch.charge ?? []).filter(line => line.as === 'graphite')
  const [only] = lots
  const moisture = content.materials.get(only?.material ?? '')?.record.moisture_percent
  if (!only || !moisture || lots.some(({ material }) => material !== only.material))
    return undefined
  return asStated(moisture, `${only.material} moisture`)
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

/** Said wherever the index stands. */
const INDEX_ONLY =
  'Index only: washed flake holds water and oxide layers as well, so that it proves no stage.'

/** What the uptake would stand for; less its salt where that was found. */
export function stageIndexResult(bench: Bench, batch: Batch, sofar: Results): Result | undefined {
  const withoutSalt = estimateOf(sofar, 'uptakeWithoutSalt_percent')
  const uptake_percent = withoutSalt ?? estimateOf(sofar, 'uptake_percent')
  // Product lost on the way can leave less than went in.
  if (!uptake_percent || uptake_percent.value <= 0) return undefined
  const acidPerAnion = measured(
    (LEAST_ACID + MOST_ACID) / 2,
    rectangular((MOST_ACID - LEAST_ACID) / 2),
    'acid per anion'
  )
  const result = singleResult(
    openStep(bench, batch, 'product'),
    {
      quantity: 'stageIndex',
      basis: stageIndexBasis,
      notes: [
        withoutSalt ? 'From the uptake without leachable salt.' : 'From the uptake, dry basis.'
      ]
    },
    () => stageIndex({ uptake_percent, acidPerAnion })
  )
  return result && { ...result, remark: { is: 'process', text: INDEX_ONLY } }
}
