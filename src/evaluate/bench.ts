/** Readings to estimates: what an instrument's record says of how sure a reading is. */

import type { BudgetLineParts } from '../metrology/budget-line.ts'
import {
  type Cause,
  type Estimate,
  estimate,
  exact,
  rectangular,
  type Term,
  triangular
} from '../metrology/estimate.ts'
import type { Repeatability } from '../metrology/readings.ts'
import { type UnitName } from '../metrology/units.ts'
import { inUnit, type AnyQuantity, type Reading } from '../metrology/written.ts'
import { type FieldPath, type Problem, problemAt } from '../problem.ts'
import { quantities } from '../quantities.ts'
import { calibrationOn, versionOn } from '../records/references.ts'
import type { Role } from '../records/schemas/common.ts'
import type { Calibration, Records, Entry, Instrument, Method } from '../records/types.ts'
import type { OverdueUse } from './types.ts'

type InstrumentsByRole = Partial<Record<Role, string>>

/** One lot's evaluation: what it may look up, and what it finds on the way. */
export interface Bench {
  readonly content: Records
  readonly lot: string
  readonly entry: Entry<unknown>
  readonly problems: Problem[]
  readonly used: Set<string>
  readonly overdue: OverdueUse[]
  readonly readers: Readers
}

/** The readings of one test or step: its day, its instruments, its place in the record. */
export interface Session {
  readonly bench: Bench
  readonly day: string
  readonly field: FieldPath
  readonly method: Method | undefined
  readonly instruments: InstrumentsByRole
}

/** @param readers filled as instruments are used; the same for every lot of a content */
export const openBench = (
  content: Records,
  lot: string,
  entry: Entry<unknown>,
  readers: Readers
): Bench => ({
  content,
  lot,
  entry,
  readers,
  problems: [],
  used: new Set(),
  overdue: []
})

/**
 * Start the readings of a test or step.
 *
 * @param methodId the method's edition valid on the day is used, and its instruments unless the
 *   test names others
 */
export function openSession(
  bench: Bench,
  day: string,
  field: FieldPath,
  methodId: string | undefined,
  instruments: InstrumentsByRole | undefined
): Session {
  const versions = methodId === undefined ? undefined : bench.content.methods.get(methodId)
  const method = versionOn(versions, day)?.record
  if (versions && !method)
    report(bench, field, 'NO_VALID_REVISION', [
      `method ${methodId} has no edition valid on ${day}`,
      `its first is valid from ${versions[0]!.record.validFrom}`
    ])
  return { bench, day, field, method, instruments: { ...method?.instruments, ...instruments } }
}

/** Note a problem at a field of the lot's record. */
export function report(
  bench: Bench,
  field: FieldPath,
  code: Problem['code'],
  [message, hint]: readonly [string, string]
): void {
  bench.problems.push(problemAt(bench.entry.at(field), code, message, hint))
}

/**
 * A reading with its instrument's calibration and resolution.
 *
 * @param unit the unit the reading is held in
 * @param what names the reading in budgets: 'reading 2 mass'
 */
export function read(
  session: Session,
  reading: Reading,
  unit: UnitName,
  role: Role,
  what: string
): Estimate {
  const { bench } = session
  const id = session.instruments[role]
  const instrument = id === undefined ? undefined : bench.content.instruments.get(id)?.record
  if (!instrument) {
    warnOnce(session, role)
    return estimate(reading.value, [resolutionTerm(bench, writtenDigits, reading.resolution, what)])
  }
  bench.used.add(instrument.id)
  noteOverdue(session, instrument, role)
  const { step, causes, resolutionLine } = readerOf(session, instrument, unit)
  if (step === undefined) misfit(session, instrument, unit, role)
  return estimate(reading.value, [
    ...causes.map(({ cause, u }) => ({ cause, u: u(reading.value) })),
    resolutionTerm(bench, resolutionLine, Math.max(step ?? 0, reading.resolution), what)
  ])
}

/**
 * The method's repeatability in the unit of its quantity; undefined where it states none.
 *
 * A bare % is of the result, unless the quantity itself is in %: then it is in the quantity's own per
 * cents, and one of the result has a field of its own.
 *
 * @param value mean of the readings, which a relative repeatability refers to
 */
export function repeatabilityOf(
  method: Method | undefined,
  value: number
): Repeatability | undefined {
  const ofResult = method?.relativeRepeatability
  if (method && ofResult)
    return {
      s: (ofResult.s_percent.value / 100) * Math.abs(value),
      df: ofResult.df,
      name: `${method.id} repeatability, ${ofResult.s_percent.written} of the result (${ofResult.from})`,
      line: {
        is: 'repeatability',
        method: method.id,
        ofResult: ofResult.s_percent.written,
        from: ofResult.from
      }
    }
  if (!method?.repeatability) return undefined
  const { s, df, from } = method.repeatability
  const quantity = Object.values(quantities).find(({ key }) => key === method.quantity)!
  const absolute = inUnit(s, quantity.unit)?.value
  const relative =
    s.unit === '%' && quantity.unit !== '%' ? (Number(s.digits) / 100) * Math.abs(value) : undefined
  const deviation = relative ?? absolute
  if (deviation === undefined) return undefined
  return {
    s: deviation,
    df,
    name: `${method.id} repeatability (${from})`,
    line: { is: 'repeatability', method: method.id, from }
  }
}

/** A titrant's concentration; told where it was not in force on the day. */
export function titrantConcentration(session: Session, id: string): Estimate {
  const titrant = session.bench.content.titrants.get(id)?.record
  if (!titrant) return exact(0)
  if (titrant.standardised > session.day || titrant.expires < session.day)
    report(session.bench, [...session.field, 'titrant'], 'DATE_ORDER', [
      `titrant ${id} stands from ${titrant.standardised} to ${titrant.expires}, not on ${session.day}`,
      'name the standardisation that was in force, or check the dates'
    ])
  const u = titrant.expandedUncertainty_mol_per_L.value / titrant.coverageFactor.value
  const name = `${id} concentration`
  return estimate(titrant.concentration_mol_per_L.value, [
    {
      cause: {
        name,
        pool: name,
        kind: 'B',
        df: Infinity,
        line: { is: 'concentration', titrant: id }
      },
      u
    }
  ])
}

/** What an instrument's record says of its readings in one unit. */
export interface Reader {
  /** One step; undefined where it reads in units of another kind. */
  readonly step: number | undefined
  /** Causes common to all its readings. */
  readonly causes: readonly CommonCause[]
  /** Budget line of its steps. */
  readonly resolutionLine: NamedLine
}

/** A budget line by its name and in parts. */
interface NamedLine {
  readonly pool: string
  readonly line: BudgetLineParts
}

const writtenDigits: NamedLine = { pool: 'written digits', line: { is: 'written digits' } }

interface CommonCause {
  readonly cause: Cause
  readonly u: (value: number) => number
}

/** Readers by what makes them differ: the calibration, or the instrument without one; the unit. */
export type Readers = Map<Calibration | Instrument, Partial<Record<UnitName, Reader>>>

/** The reader of an instrument in a unit, worked out once for all lots. */
function readerOf({ bench, day }: Session, instrument: Instrument, unit: UnitName): Reader {
  const calibration = calibrationOn(instrument, day)
  const owner = calibration ?? instrument
  const byUnit = bench.readers.get(owner) ?? {}
  bench.readers.set(owner, byUnit)
  return (byUnit[unit] ??= {
    step: inUnit(instrument.resolution, unit)?.value,
    causes: commonCauses(instrument, calibration, unit),
    resolutionLine: {
      pool: `${instrument.id} resolution`,
      line: { is: 'resolution', instrument: instrument.id }
    }
  })
}

function commonCauses(
  { id, earlierCalibrations }: Instrument,
  calibration: Calibration | undefined,
  unit: UnitName
): CommonCause[] {
  const { expandedUncertainty, coverageFactor, tolerance, distribution, on } = calibration ?? {}
  const within = distribution === 'triangular' ? triangular : rectangular
  // Each calibration errs in its own way, so readings under two of them do not err together.
  const since = earlierCalibrations ? ` of ${on}` : ''
  const common = (
    is: 'calibration' | 'tolerance',
    size: AnyQuantity,
    per: (size: number) => number
  ): CommonCause => {
    const name = `${id} ${is}${since}`
    const line = { is, instrument: id, ...(since && on !== undefined ? { of: on } : {}) }
    const absolute = inUnit(size, unit)?.value
    const fraction = Number(size.digits) / 100
    return {
      cause: { name, pool: name, kind: 'B', df: Infinity, line },
      u: value => per(absolute ?? fraction * Math.abs(value))
    }
  }
  return [
    ...(expandedUncertainty && coverageFactor
      ? [common('calibration', expandedUncertainty, U => U / coverageFactor.value)]
      : []),
    ...(tolerance ? [common('tolerance', tolerance, within)] : [])
  ]
}

/** Half a step either way is equally likely: GUM F.2.2.1. */
function resolutionTerm(bench: Bench, { pool, line }: NamedLine, step: number, what: string): Term {
  const name = `${pool}: ${bench.lot} ${what}`
  return { cause: { name, pool, kind: 'B', df: Infinity, line }, u: rectangular(step / 2) }
}

function noteOverdue(session: Session, instrument: Instrument, role: Role): void {
  const { bench, day, field } = session
  const calibration = calibrationOn(instrument, day)
  if (!calibration) return noteUncalibrated(session, instrument, role)
  const { on, due } = calibration
  if (on > day) return noteLaterCalibration(session, instrument.id, on)
  const known = bench.overdue.some(use => use.instrument === instrument.id && use.used === day)
  if (due < day && !known) bench.overdue.push({ instrument: instrument.id, due, used: day, field })
}

/** Papers would trace the reading to a calibration it was not made under. */
function noteLaterCalibration({ bench, day, field }: Session, id: string, on: string): void {
  const message = `${id} was read on ${day}, before the calibration recorded for it, of ${on}`
  if (!bench.problems.some(problem => problem.message === message))
    report(bench, field, 'NO_CALIBRATION', [
      message,
      `add the calibration of that day under 'earlier-calibrations' of ${id}`
    ])
}

function noteUncalibrated({ bench, field }: Session, { id }: Instrument, role: Role): void {
  const message = `${role} was read on ${id}, which has no calibration: its error is not in the uncertainty`
  if (!bench.problems.some(problem => problem.message === message))
    report(bench, field, 'NO_CALIBRATION', [message, `record the calibration of ${id}`])
}

function warnOnce({ bench, field, method }: Session, role: Role): void {
  const message = `no instrument is named for ${role}: only the written digits count as uncertainty`
  const known = bench.problems.some(
    problem => problem.message === message && problem.field[1] === field[1]
  )
  if (!known)
    report(bench, field, 'NO_CALIBRATION', [
      message,
      method
        ? `add '${role}' to the instruments of method ${method.id}, or of this test`
        : `add 'instruments: { ${role}: … }'`
    ])
}

function misfit(session: Session, instrument: Instrument, unit: UnitName, role: Role): void {
  const message = `${instrument.id} reads in ${instrument.resolution.unit}, not in ${unit}`
  if (!session.bench.problems.some(problem => problem.message === message))
    report(session.bench, session.field, 'WRONG_DIMENSION', [
      message,
      `name the instrument that was used for ${role}`
    ])
}
