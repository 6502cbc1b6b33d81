/** Free acidity of a flake lot: titrations, their blanks, and the reporting limit the blanks set. */

import {
  type AliquotInputs,
  freeAcid,
  freeAcidAmount,
  freeAcidAmountBasis,
  freeAcidBasis,
  type WholeExtractInputs
} from '../chemistry/free-acidity.ts'
import { type ReportingLimit, reportingLimit } from '../chemistry/reporting-limit.ts'
import type { Computed, Estimate } from '../metrology/estimate.ts'
import { meanOf, meanOfReadings } from '../metrology/readings.ts'
import { inUnit } from '../metrology/written.ts'
import type { Batch } from '../records/types.ts'
import type { FlakeTests } from '../records/schemas/tests.ts'
import { type Bench, read, type Session, titrantConcentration } from './bench.ts'
import { instrumentsFor, type MethodOf, openTest } from './flake.ts'
import { type Account, attempt, repeatedResult } from './result.ts'
import type { Result } from './types.ts'

type Titration = NonNullable<FlakeTests['freeAcid']>

interface Expression {
  readonly quantity: 'freeAcid_percent' | 'freeAcid_mmol_per_g'
  readonly basis: Account['basis']
  readonly model: (inputs: WholeExtractInputs | AliquotInputs) => Computed
  readonly limitOf: (limit: ReportingLimit) => number
}

export const freeAcidResult = (bench: Bench, batch: Batch, methodOf: MethodOf) =>
  titrationResult(bench, batch, methodOf, {
    quantity: 'freeAcid_percent',
    basis: freeAcidBasis,
    model: freeAcid,
    limitOf: limit => limit.freeAcid_percent
  })

export const freeAcidAmountResult = (bench: Bench, batch: Batch, methodOf: MethodOf) =>
  titrationResult(bench, batch, methodOf, {
    quantity: 'freeAcid_mmol_per_g',
    basis: freeAcidAmountBasis,
    model: freeAcidAmount,
    limitOf: limit => limit.freeAcid_mmol_per_g
  })

function titrationResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  { quantity, basis, model, limitOf }: Expression
): Result | undefined {
  const test = tests?.freeAcid
  if (!test) return undefined
  const session = openTest(bench, test, 'freeAcid', 'free-acid', methodOf)
  const shared = sharedInputs(session, test)
  const account: Account = {
    quantity,
    basis,
    written: {
      columns: ['Mass', 'Titre'],
      rows: test.readings.map(({ mass_g, titre_mL }) => [mass_g.written, titre_mL.written])
    },
    instrumentOf: instrumentsFor(session, {
      mass_g: 'mass',
      titre_mL: 'titre',
      blank_mL: 'titre',
      extract_mL: 'volume',
      aliquot_mL: 'volume'
    }),
    deviation: test.deviation,
    notes: notesOf(test)
  }
  const result = repeatedResult(session, test.readings, account, (reading, what) =>
    model({
      ...shared,
      titre_mL: read(session, reading.titre_mL, 'mL', 'titre', `${what} titre`),
      mass_g: read(session, reading.mass_g, 'g', 'mass', `${what} mass`)
    })
  )
  const limit = result && attempt(bench, session.field, () => limitFrom(session, test, shared))
  if (!result || !limit) return result
  const below = limitOf(limit)
  return result.estimate.value < below ? { ...result, below } : result
}

type Shared = Pick<WholeExtractInputs, 'blank_mL' | 'titrant_mol_per_L'> &
  Partial<Pick<AliquotInputs, 'extract_mL' | 'aliquot_mL'>>

/** Inputs that all readings of a test have in common. */
function sharedInputs(session: Session, test: Titration): Shared {
  const blanks = test.blanks_mL.map((blank, index) =>
    read(session, blank, 'mL', 'titre', `free acidity, blank ${index + 1}`)
  )
  return {
    blank_mL: meanOfReadings(blanks, `${session.bench.lot} blanks`),
    titrant_mol_per_L: titrantConcentration(session, test.titrant),
    ...aliquotInputs(session, test)
  }
}

function aliquotInputs(session: Session, { extract_mL, aliquot_mL }: Titration) {
  if (!extract_mL || !aliquot_mL) return {}
  return {
    extract_mL: read(session, extract_mL, 'mL', 'volume', 'free acidity, extract'),
    aliquot_mL: read(session, aliquot_mL, 'mL', 'volume', 'free acidity, aliquot')
  }
}

function limitFrom(session: Session, test: Titration, shared: Shared): ReportingLimit {
  const masses = test.readings.map((reading, index) =>
    read(session, reading.mass_g, 'g', 'mass', `Free acidity as H₂SO₄, reading ${index + 1} mass`)
  )
  return reportingLimit(
    {
      titres_mL: test.blanks_mL.map(({ value }) => value),
      resolution_mL: buretteStep(session, test),
      titrations: test.readings.length
    },
    { ...shared, mass_g: meanOf(masses) as Estimate }
  )
}

/** One step of the burette; of the written blanks where no burette is named. */
function buretteStep({ bench, instruments }: Session, { blanks_mL }: Titration): number {
  const burette = bench.content.instruments.get(instruments.titre ?? '')?.record
  const step = burette && inUnit(burette.resolution, 'mL')?.value
  return step ?? Math.max(...blanks_mL.map(({ resolution }) => resolution))
}

function notesOf({ blanks_mL, extract_mL, aliquot_mL, endPointPh }: Titration): string[] {
  return [
    `Blanks: ${blanks_mL.map(({ written }) => written).join(', ')}.`,
    extract_mL && aliquot_mL
      ? `Of an extract of ${extract_mL.written}, ${aliquot_mL.written} was titrated.`
      : 'The whole extract was titrated.',
    ...(endPointPh ? [`Titrated to pH ${endPointPh.written}.`] : [])
  ]
}
