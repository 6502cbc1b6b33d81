/** Process figures of what surrounds the flake: neutralising, heats, what washing leaves. Never public. */

import {
  dilutionHeatBasis,
  adiabaticRise,
  formOf,
  heatOfDilution,
  heatOfNeutralisation,
  neutralisationHeatBasis,
  riseBasis
} from '../chemistry/heats.ts'
import { molarMass_g_per_mol } from '../chemistry/molar-mass.ts'
import {
  ACID_G_PER_EQUIVALENT,
  demand,
  demandBasis,
  excess,
  excessBasis
} from '../chemistry/neutralisation.ts'
import { washBasis } from '../chemistry/washing.ts'
import { expand } from '../metrology/coverage.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { liquorConductivity } from '../physics/conductivity.ts'
import type { QuantityName } from '../quantities.ts'
import type { Batch } from '../records/types.ts'
import { type Bench, type Session } from './bench.ts'
import { cationOf, isUnsaid } from './composition.ts'
import { acidIn, baseIn, chargeLines, type Stage, stagesOf, substanceIn, sum } from './liquor.ts'
import { oncePer } from '../records/once.ts'
import { type Account, attempt, estimateOf, type ProcessFigure, singleResult } from './result.ts'
import { openStep } from './steps.ts'
import type { Remark, Result, Results } from './types.ts'

const shown = (value: number, digits = 3) => Number(value.toPrecision(digits))

/** Ammonia of unsaid strength gives no figure; the warning about it is told elsewhere. */
const isSettled = (session: Session, batch: Batch) =>
  !chargeLines(session, batch).some(({ material }) => isUnsaid(material))

/** Neutraliser for all acid charged, beside what was added. */
export function neutraliserDemandResult(bench: Bench, batch: Batch): Result | undefined {
  const session = openStep(bench, batch, 'charge')
  if (!isSettled(session, batch)) return undefined
  const lines = chargeLines(session, batch)
  const neutralisers = lines.filter(({ role }) => role === 'neutraliser')
  const base = baseIn(neutralisers)
  const equivalents_mol = acidIn(lines.filter(({ role }) => role !== 'neutraliser'))
  if (!base || equivalents_mol.value === 0) return undefined
  const added = sum(neutralisers.map(({ mass_g }) => mass_g)).value
  const result = singleResult(session, account('neutraliserDemand_g', demandBasis), () =>
    demand(base.base, { equivalents_mol, strength_percent: base.percent })
  )
  return (
    result && {
      ...result,
      remark: {
        is: 'process',
        text: `Added: ${neutralisers[0]!.material.title}, ${shown(added, 4)} g. What drained off with the liquor needed none here, but needs its own.`
      }
    }
  )
}

const account = (
  quantity: ProcessFigure['quantity'],
  basis: ProcessFigure['basis'],
  notes: readonly string[] = []
): Account => ({ quantity, basis, notes })

/** The stages of a batch, once for all its figures; a balance that cannot be is told at its steps. */
const stages = oncePer((bench: Bench, batch: Batch): readonly Stage[] => {
  const session = openStep(bench, batch, 'steps')
  if (!isSettled(session, batch)) return []
  return attempt(bench, ['steps'], () => stagesOf(session, batch)) ?? []
})

/** The step that neutralises what acid there is, with what it neutralises by. */
function neutralising(bench: Bench, batch: Batch) {
  const stage = stages(bench, batch).find(({ does, base }) => does === 'neutralise' && base)
  return stage?.base && stage.before.acid_mol.value > 0 ? { stage, base: stage.base } : undefined
}

export function neutraliserExcessResult(bench: Bench, batch: Batch): Result | undefined {
  const found = neutralising(bench, batch)
  if (!found) return undefined
  const { stage, base } = found
  return singleResult(
    openStep(bench, batch, 'steps'),
    account('neutraliserExcess', excessBasis, [
      `The acid is what the liquor of the step still holds by the balance of draining and washing: ${shown(stage.before.acid_mol.value)} mol of hydrogen ion.`
    ]),
    () => excess({ supplied_mol: base.supplied_mol, equivalents_mol: stage.before.acid_mol })
  )
}

/** Rise on quenching, beside the hottest that was logged. */
export function dilutionRiseResult(bench: Bench, batch: Batch): Result | undefined {
  const all = stages(bench, batch)
  const index = all.findIndex(({ does }) => does === 'quench')
  const stage = all[index]
  if (!stage) return undefined
  const charged = all.slice(0, index).flatMap(({ added }) => added)
  const acid_g = substanceIn(charged, 'sulfuric acid')
  const water_g = sum([stage.water_g, substanceIn(stage.added, 'water')])
  if (!(acid_g.value > 0 && water_g.value > 0)) return undefined
  const ownWater_g = substanceIn(charged, 'water')
  const result = singleResult(
    openStep(bench, batch, 'steps'),
    account('dilutionRise_K', {
      formula: `${riseBasis.formula}; ${dilutionHeatBasis.formula}`,
      source: dilutionHeatBasis.source
    }),
    () =>
      adiabaticRise({
        heat_kJ: heatOfDilution({ acid_g, ownWater_g, water_g }),
        acid_g,
        liquor_g: stage.mixed_g
      })
  )
  return result && { ...result, ...loggedRemark(batch, index) }
}

/** The hottest a step was logged at, °C. */
export const hottest = (
  step: NonNullable<Batch['steps']>[number] | undefined
): number | undefined => {
  const logged = [
    step?.temperature_C,
    ...(step?.log ?? []).map(({ temperature_C }) => temperature_C)
  ]
  const values = logged.flatMap(reading => (reading ? [reading.value] : []))
  return values.length > 0 ? Math.max(...values) : undefined
}

/** The last temperature logged before a step, °C. */
export const temperatureBefore = ({ steps = [] }: Batch, index: number): number | undefined =>
  steps
    .slice(0, index)
    .map(hottest)
    .findLast(value => value !== undefined)

function loggedRemark(batch: Batch, index: number): { remark?: Remark } {
  const [from, to] = [temperatureBefore(batch, index), hottest(batch.steps?.[index])]
  if (to === undefined)
    return { remark: { is: 'process', text: 'No temperature was logged at that step.' } }
  const before = from === undefined ? '' : `, after ${shown(from)} °C when last logged before it`
  return {
    remark: { is: 'process', text: `Logged at that step: at most ${shown(to)} °C${before}.` }
  }
}

export function neutralisationRiseResult(bench: Bench, batch: Batch): Result | undefined {
  const found = neutralising(bench, batch)
  if (!found) return undefined
  const { stage, base } = found
  const { acid_mol, liquor_g } = stage.before
  const acid_g = asAcid(acid_mol)
  const neutralised_mol = base.supplied_mol.value < acid_mol.value ? base.supplied_mol : acid_mol
  const water_g = propagate(x => x.liquor_g - x.acid_g, { liquor_g, acid_g })
  const result = singleResult(
    openStep(bench, batch, 'steps'),
    account('neutralisationRise_K', {
      formula: `${riseBasis.formula}; ${neutralisationHeatBasis.formula}`,
      source: neutralisationHeatBasis.source
    }),
    () =>
      adiabaticRise({
        heat_kJ: heatOfNeutralisation(base.base, formOf(base.percent.value), {
          acid_g,
          water_g,
          neutralised_mol
        }),
        acid_g,
        liquor_g: stage.mixed_g
      })
  )
  return result && { ...result, ...loggedRemark(batch, stage.index) }
}

/** Hydrogen ion as sulfuric acid, g. */
const asAcid = (acid_mol: Estimate): Computed<'acid_mol'> =>
  propagate(x => x.acid_mol * ACID_G_PER_EQUIVALENT, { acid_mol })

/** What the last draining left, of a batch that weighed its wet cake. */
const lastDrained = (bench: Bench, batch: Batch): Stage | undefined =>
  stages(bench, batch).findLast(({ isDrained }) => isDrained)

/** What a batch was neutralised by first. */
const firstBase = (bench: Bench, batch: Batch) =>
  stages(bench, batch).find(({ base }) => base)?.base?.base

export function washedAcidResult(bench: Bench, batch: Batch, sofar: Results): Result | undefined {
  const last = lastDrained(bench, batch)
  if (!last) return undefined
  const session = openStep(bench, batch, 'steps')
  const result = singleResult(session, account('washedAcid_percent', washBasis), () =>
    ofProduct(asAcid(last.after.acid_mol), batch)
  )
  return result && { ...result, ...besideMeasured(sofar, 'freeAcid_percent', '%') }
}

export function washedSaltResult(bench: Bench, batch: Batch): Result | undefined {
  const last = lastDrained(bench, batch)
  const base = firstBase(bench, batch)
  if (!last || !base) return undefined
  const perMol = saltPerMol_g[cationOf(base)]
  const found = batch.product.leachableSalt_percent
  const result = singleResult(
    openStep(bench, batch, 'steps'),
    account('washedSalt_percent', washBasis),
    () =>
      ofProduct(
        propagate(x => x.salt_mol * perMol, { salt_mol: last.after.salt_mol }),
        batch
      )
  )
  return result && found
    ? { ...result, remark: { is: 'process', text: `Leachable salt found: ${found.written}.` } }
    : result
}

/** Sulfate a mol of hydrogen ion leaves, g. */
const saltPerMol_g = {
  ammonium: molarMass_g_per_mol('(NH4)2SO4') / 2,
  sodium: molarMass_g_per_mol('Na2SO4') / 2,
  calcium: molarMass_g_per_mol('CaSO4') / 2
}

const ofProduct = (dissolved_g: Estimate, { product }: Batch): Computed<'dissolved_g'> =>
  propagate(x => (100 * x.dissolved_g) / product.mass_g.value, { dissolved_g })

/** What the test found, where there was one. */
function besideMeasured(sofar: Results, quantity: QuantityName, unit: string): { remark?: Remark } {
  const measured = estimateOf(sofar, quantity)
  return measured
    ? {
        remark: {
          is: 'process',
          text: `The test found ${shown(measured.value)} ${unit} (U = ${shown(expand(measured).U, 2)} ${unit}). Well-mixed washes leave the least there can be: acid comes out of the flake slowly.`
        }
      }
    : {}
}

/** Slurry of the conductivity test: 10 g in 100 mL. */
const SLURRY_G_PER_L = 100

export function washedConductivityResult(
  bench: Bench,
  batch: Batch,
  sofar: Results
): Result | undefined {
  const last = lastDrained(bench, batch)
  if (!last) return undefined
  const base = firstBase(bench, batch) ?? 'sodium hydrogen carbonate'
  const perLitre = (mol: Estimate) =>
    propagate(x => (x.mol * SLURRY_G_PER_L) / batch.product.mass_g.value, { mol })
  const result = singleResult(
    openStep(bench, batch, 'steps'),
    account('washedConductivity_uS_per_cm', {
      formula: 'κ = Σ λ · c, of 10 g in 100 mL, ' + washBasis.formula,
      source: `ions at infinite dilution, 25 °C, handbook values; ${washBasis.source}`
    }),
    () =>
      liquorConductivity(cationOf(base), {
        acid_mol_per_L: perLitre(last.after.acid_mol),
        salt_mol_per_L: perLitre(last.after.salt_mol)
      })
  )
  return result && { ...result, ...besideMeasured(sofar, 'conductivity_uS_per_cm', 'µS/cm') }
}
