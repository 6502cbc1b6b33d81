/** Readings of one test to its result: a model for each reading, their mean, and the working. */

import { DomainError } from '../metrology/domain.ts'
import { type Computed, type Estimate, isNearlyLinear } from '../metrology/estimate.ts'
import { meanOfReadings, meanValue, type Repeatability } from '../metrology/readings.ts'
import type { FieldPath } from '../problem.ts'
import {
  type ProcessName,
  quantities,
  type QuantityName,
  quantityOf,
  titleInSentence
} from '../quantities.ts'
import type { Method } from '../records/types.ts'
import { type Bench, repeatabilityOf, report, type Session } from './bench.ts'
import { excessiveScatter } from './scatter.ts'
import type { OpenBasis } from './bases.ts'
import type { Note } from './notes.ts'
import type { Result, WrittenReadings } from './types.ts'

/** Formula and source, as a model's file states them. */
export interface Basis {
  readonly formula: string
  readonly source: string
}

/** A figure that any language has words for, basis and notes: what customers may see has no other. */
export interface OpenFigure {
  readonly quantity: QuantityName
  readonly basis: OpenBasis
  readonly notes?: readonly Note[]
}

/** A figure of the process may be told in English alone, as its pages are. */
export interface ProcessFigure {
  readonly quantity: ProcessName
  readonly basis: Basis
  readonly notes?: readonly (Note | string)[]
}

/** What a test's evaluation says beside its readings. */
export type Account = AccountOf & (OpenFigure | ProcessFigure)

interface AccountOf {
  readonly written?: WrittenReadings
  readonly instrumentOf?: Readonly<Record<string, string>>
  /** Where the record holds an input, if not under its own name in the field of the figure. */
  readonly fieldOf?: Readonly<Record<string, FieldPath>>
  readonly tested?: string | undefined
  readonly deviation?: string | undefined
  /** True where the figure lies near 0 by its nature, so that its readings differ by much of it. */
  readonly nearNothing?: boolean
  /** True where its readings are of places that differ by themselves, by more than a gauge does. */
  readonly uneven?: boolean
  /** True where a method for a sister quantity in the same unit repeats as well for this one. */
  readonly alike?: boolean
}

/** Run a model; a refused input becomes a problem at its field, and no figure. */
export function attempt<Value>(
  bench: Bench,
  field: FieldPath,
  model: () => Value,
  fieldOf: Readonly<Record<string, FieldPath>> = {}
): Value | undefined {
  try {
    return model()
  } catch (error) {
    if (!(error instanceof DomainError)) throw error
    const { input, reason, hint } = error
    report(bench, fieldOf[input] ?? [...field, input], 'OUT_OF_DOMAIN', [reason, hint])
    return undefined
  }
}

/**
 * The result of repeated readings of one quantity.
 *
 * @param model one reading's figure; undefined where its inputs were refused
 */
export function repeatedResult<Reading>(
  session: Session,
  readings: readonly Reading[],
  account: Account,
  model: (reading: Reading, what: string) => Computed
): Result | undefined {
  const { bench, field, method } = session
  const { title, key } = quantities[account.quantity]
  const figures = readings.map((reading, index) =>
    attempt(bench, [...field, 'readings', index], () =>
      model(reading, `${title}, reading ${index + 1}`)
    )
  )
  const computed = figures.filter(figure => figure !== undefined)
  if (computed.length < readings.length) return undefined
  const repeatability = repeatabilityFor(method, account, meanValue(computed))
  if (computed.length === 1 && !repeatability) warnSingle(session, account.quantity)
  if (!account.nearNothing) warnScattered(session, account, computed, repeatability)
  const named = { name: `${bench.lot} ${title}`, of: { lot: bench.lot, quantity: key } }
  const mean = meanOfReadings(computed, named, repeatability)
  const each = computed.map((estimate, index) => ({ label: `reading ${index + 1}`, estimate }))
  return {
    ...head(session, account),
    estimate: mean,
    n: computed.length,
    each,
    readings: each,
    trace: () => ({
      ...account.basis,
      ...(account.written ? { readings: account.written } : {}),
      inputs: computed[0]!.inputs,
      inputsOf: 'reading 1',
      instrumentOf: account.instrumentOf ?? {},
      notes: [
        ...bendNotes(computed),
        ...(repeatability && computed.length > 1
          ? [{ is: 'pooled' as const, n: computed.length }]
          : []),
        ...(account.notes ?? [])
      ]
    })
  }
}

/** One method may serve several figures of a test; its repeatability is of the quantity it names. */
function repeatabilityFor(
  method: Method | undefined,
  { quantity, alike }: Account,
  value: number
): Repeatability | undefined {
  const named = quantityOf(method?.quantity ?? '')
  const holds = named === quantity || (named && alike && unitOf(named) === unitOf(quantity))
  return holds ? repeatabilityOf(method, value) : undefined
}

const unitOf = (quantity: QuantityName) => quantities[quantity].unit

/** The result of a model applied once. */
export function singleResult(
  session: Session,
  account: Account,
  model: () => Computed
): Result | undefined {
  const computed = attempt(session.bench, session.field, model, account.fieldOf)
  if (!computed) return undefined
  return {
    ...head(session, account),
    estimate: computed,
    n: 1,
    each: [],
    readings: [],
    trace: () => ({
      ...account.basis,
      inputs: computed.inputs,
      instrumentOf: account.instrumentOf ?? {},
      notes: [...bendNotes([computed]), ...(account.notes ?? [])]
    })
  }
}

/** Said where the first order does not give the uncertainty to two digits. */
const bendNotes = (computed: readonly Computed[]): Note[] =>
  computed.every(isNearlyLinear) ? [] : [{ is: 'budget bends' }]

/**
 * Warn of a figure no workshop of this kind should meet; it stands all the same. One that cannot be
 * told from the blank may lie below 0 by as much as its reporting limit.
 */
export function checkPlausible(
  bench: Bench,
  { quantity, estimate, field, below = 0 }: Result
): void {
  const { unit, band } = quantities[quantity]
  const [least, most] = band
  // As it is told: 5.0000000000001 would read as 5, outside 0 to 5.
  const value = Number(estimate.value.toPrecision(4))
  if (value >= least - below && value <= most) return
  const shown = `${value}${unit === '1' ? '' : ` ${unit}`}`
  report(bench, field, 'IMPLAUSIBLE', [
    `${titleInSentence(quantity)} comes to ${shown}, outside the usual ${least} to ${most}`,
    'check the readings and their units'
  ])
}

/** Values by name, for models that read one another's results. */
export const estimateOf = (
  results: Partial<Record<QuantityName, Result>>,
  quantity: QuantityName
): Estimate | undefined => results[quantity]?.estimate

function head({ method, field, day }: Session, account: Account) {
  return {
    quantity: account.quantity,
    ...(method ? { method } : {}),
    tested: account.tested ?? day,
    ...(account.deviation === undefined ? {} : { deviation: account.deviation }),
    field
  }
}

function warnScattered(
  { bench, field }: Session,
  { quantity, uneven }: Account,
  figures: readonly Estimate[],
  repeatability: Repeatability | undefined
): void {
  const scatter = excessiveScatter(
    figures.map(({ value }) => value),
    repeatability,
    uneven
  )
  if (!scatter) return
  const text = (value: number) => Number(value.toPrecision(3))
  report(bench, [...field, 'readings'], 'SCATTERED_READINGS', [
    `the readings of ${titleInSentence(quantity)} lie ${text(scatter.range)} apart, more than scatter explains (${text(scatter.most)})`,
    'check digits and units of each; a reading is left out only for a reason found'
  ])
}

function warnSingle({ bench, field }: Session, quantity: QuantityName): void {
  report(bench, field, 'SINGLE_READING', [
    `${titleInSentence(quantity)} rests on one reading and no known repeatability: its scatter is not in the uncertainty`,
    "repeat the reading, or record the method's repeatability"
  ])
}
