/** Free acidity of a flake lot: titrations, their blanks, and the reporting limit the blanks set. */

import {
  acidAmount,
  acidAmountBasis,
  type AliquotInputs,
  freeAcid,
  freeAcidBasis,
  type WholeExtractInputs
} from '../chemistry/free-acidity.ts'
import { type ReportingLimit, reportingLimit } from '../chemistry/reporting-limit.ts'
import { exact } from '../metrology/estimate.ts'
import { meanOf, meanOfReadings } from '../metrology/readings.ts'
import { inUnit } from '../metrology/written.ts'
import type { Batch } from '../records/types.ts'
import type { FlakeTests } from '../records/schemas/tests.ts'
import { type Bench, read, type Session, titrantConcentration } from './bench.ts'
import { instrumentsFor, type MethodOf, openTest } from './flake.ts'
import { type Account, attempt, repeatedResult, singleResult } from './result.ts'
import type { Note } from './notes.ts'
import type { Result, Results } from './types.ts'

type Titration = NonNullable<FlakeTests['freeAcid']>

export function freeAcidResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf
): Result | undefined {
  const test = tests?.freeAcid
  if (!test) return undefined
  const session = openTest(bench, test, 'freeAcid', 'free-acid', methodOf)
  const shared = sharedInputs(session, test)
  const account: Account = {
    quantity: 'freeAcid_percent',
    basis: freeAcidBasis,
    written: {
      columns: ['Mass', 'Titre'],
      rows: test.readings.map(({ mass_g, titre_mL }) => [mass_g.written, titre_mL.written])
    },
    instrumentOf: instrumentsFor(session, {
      mass_g: 'mass',
      titre_mL: 'titre',
      blank_mL: 'titre',
      ...(test.extract_mL && test.aliquot_mL ? { extract_mL: 'volume', aliquot_mL: 'volume' } : {})
    }),
    deviation: test.deviation,
    notes: notesOf(test)
  }
  const result = repeatedResult(session, test.readings, account, (reading, what) =>
    freeAcid({
      ...shared,
      titre_mL: read(session, reading.titre_mL, 'mL', 'titre', `${what} titre`),
      mass_g: read(session, reading.mass_g, 'g', 'mass', `${what} mass`)
    })
  )
  const limit = result && attempt(bench, session.field, () => limitFrom(session, test, shared))
  return result && limit ? withLimit(result, limit.freeAcid_percent) : result
}

/** The same acid as hydrogen ion: one measurement, two ways of giving it. */
export function freeAcidAmountResult(
  bench: Bench,
  { tests }: Batch,
  methodOf: MethodOf,
  sofar: Results
): Result | undefined {
  const test = tests?.freeAcid
  const asAcid = sofar.freeAcid_percent
  if (!test || !asAcid) return undefined
  const session = openTest(bench, test, 'freeAcid', 'free-acid', methodOf)
  const account: Account = {
    quantity: 'freeAcid_mmol_per_g',
    basis: acidAmountBasis,
    deviation: test.deviation
  }
  const result = singleResult(session, account, () =>
    acidAmount({ freeAcid_percent: asAcid.estimate })
  )
  if (!result) return undefined
  const amountOf = (percent: number) => acidAmount({ freeAcid_percent: exact(percent) }).value
  return {
    ...result,
    n: asAcid.n,
    ...(asAcid.below === undefined ? {} : { below: amountOf(asAcid.below) })
  }
}

const withLimit = (result: Result, below: number): Result =>
  result.estimate.value < below ? { ...result, below } : result

type Shared = Pick<WholeExtractInputs, 'blank_mL' | 'titrant_mol_per_L'> &
  Partial<Pick<AliquotInputs, 'extract_mL' | 'aliquot_mL'>>

/** Inputs that all readings of a test have in common. */
function sharedInputs(session: Session, test: Titration): Shared {
  const { lot } = session.bench
  const blanks = test.blanks_mL.map((blank, index) =>
    read(session, blank, 'mL', 'titre', `free acidity, blank ${index + 1}`)
  )
  return {
    blank_mL: meanOfReadings(blanks, { name: `${lot} blanks`, of: { lot, blanks: true } }),
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
  const masses = test.readings.map(({ mass_g }) => exact(mass_g.value))
  return reportingLimit(
    {
      titres_mL: test.blanks_mL.map(({ value }) => value),
      resolution_mL: buretteStep(session, test),
      titrations: test.readings.length
    },
    { ...shared, mass_g: meanOf(masses) }
  )
}

/** One step of the burette; of the written blanks where no burette is named. */
function buretteStep({ bench, instruments }: Session, { blanks_mL }: Titration): number {
  const burette = bench.content.instruments.get(instruments.titre ?? '')?.record
  const step = burette && inUnit(burette.resolution, 'mL')?.value
  return step ?? Math.max(...blanks_mL.map(({ resolution }) => resolution))
}

function notesOf({ blanks_mL, extract_mL, aliquot_mL, endPointPh }: Titration): Note[] {
  return [
    { is: 'blanks', written: blanks_mL.map(({ written }) => written) },
    extract_mL && aliquot_mL
      ? { is: 'aliquot', extract: extract_mL.written, aliquot: aliquot_mL.written }
      : { is: 'whole extract titrated' },
    ...(endPointPh ? [{ is: 'titrated to pH' as const, written: endPointPh.written }] : []),
    { is: 'reporting limit' }
  ]
}
