/**
 * How long a heated plate takes to be as hot at its back as stated, and what a film adds to that.
 *
 *     time        t = t₁ + (t₂ − t₁) · (T − T₁) / (T₂ − T₁) − t₀
 *     gained      g = t − t_bare
 *     per film    g / thickness, g / film mass per area, g / active mass per area
 *
 * Between two lines of a log the plate is taken to heat evenly. A plate's own heat is in both times and
 * goes out of the difference, so only panels on plates alike, heated alike, may be set against each other.
 * Bench screening: no such time is a fire rating, which accredited laboratories give by furnace tests.
 *
 * Source: linear interpolation; definitions of a difference and of a quotient.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { weightedSum } from '../metrology/readings.ts'

export const backsideTimeBasis = {
  formula: 't = t_1 + (t_2 − t_1) · (T − T_1) / (T_2 − T_1) − t_0, t_0 when heating began',
  source: 'straight line between the last log line below T and the first that is not'
}

export const timeGainedBasis = {
  formula: 'g = t − t_bare',
  source: 'definition: what the film adds to a bare plate heated alike'
}

const perBasis = (symbol: string, of: string) => ({
  formula: `g″ = g / ${symbol}, ${symbol} ${of}`,
  source: 'definition: films of unequal thickness compare by it'
})

export const gainPerFilmBasis = perBasis('t', 'of the dry film')
export const gainPerFilmMassBasis = perBasis('m″', 'of the dry film')
export const gainPerActiveMassBasis = perBasis('m″_EG', 'of the flake')

/** A line of a log. */
export interface LogLine {
  readonly at_s: number
  readonly temperature_C: number
}

/**
 * Where a log first reaches a temperature.
 *
 * @param lines in order of time
 * @returns index of the first line that is not below it; undefined where none is
 */
export function reachedAt(lines: readonly LogLine[], limit_C: number): number | undefined {
  const index = lines.findIndex(({ temperature_C }) => temperature_C >= limit_C)
  return index < 0 ? undefined : index
}

export interface BacksideInputs {
  /** Last line below the stated temperature: when, s. */
  earlier_s: Estimate
  /** First line not below it: when, s. */
  later_s: Estimate
  /** Temperature of the earlier line, °C. */
  earlier_C: Estimate
  /** Temperature of the later line, °C. */
  later_C: Estimate
  /** When heating began, on the log's clock, s. */
  start_s: Estimate
  /** The stated temperature, °C. */
  limit_C: Estimate
}

const S_PER_MIN = 60

/** What the time is linear in, or nearly: an error common to both temperatures is in one of them alone. */
type CrossingInputs = Pick<BacksideInputs, 'earlier_s' | 'later_s' | 'start_s'> & {
  /** How far below the stated temperature the earlier line is, K. */
  below_K: Estimate
  /** How far it is from one line to the other, K. */
  rise_K: Estimate
}

/**
 * Time until the back of a plate is as hot as stated.
 *
 * @returns time from the start of heating, min
 * @throws DomainError when the two lines do not rise through the stated temperature in time
 */
export function backsideTime(inputs: BacksideInputs): Computed<keyof CrossingInputs> {
  const { earlier_s, later_s, earlier_C, later_C, start_s, limit_C } = inputs
  const refuse = (input: keyof BacksideInputs, rule: string, hint: string): never => {
    throw new DomainError(input, rule, inputs[input].value, hint)
  }
  if (!(later_s.value > earlier_s.value))
    refuse('later_s', `after ${earlier_s.value}`, 'lines of a log come one after the other')
  if (!(earlier_C.value < limit_C.value))
    refuse('earlier_C', `below ${limit_C.value}`, 'the log must begin before the plate is so hot')
  if (!(later_C.value >= limit_C.value))
    refuse('later_C', `at least ${limit_C.value}`, 'the log ends before the plate is so hot')
  if (!(start_s.value <= later_s.value))
    refuse('start_s', `at most ${later_s.value}`, 'heating began before the plate was hot')
  const crossing: Record<keyof CrossingInputs, Estimate> = {
    earlier_s,
    later_s,
    below_K: weightedSum([limit_C, earlier_C], [1, -1]),
    rise_K: weightedSum([later_C, earlier_C], [1, -1]),
    start_s
  }
  return propagate(x => {
    const part = x.below_K / x.rise_K
    return (x.earlier_s + part * (x.later_s - x.earlier_s) - x.start_s) / S_PER_MIN
  }, crossing)
}

export interface GainInputs {
  /** Time of the coated panel, min. */
  backsideTime_min: Estimate
  /** Time of the bare one, or the mean of several, min. */
  bareTime_min: Estimate
}

/**
 * Time a film adds. Below 0 where the coated plate was hot first.
 *
 * @returns time gained, min
 * @throws DomainError when either time is not above 0
 */
export function timeGained(inputs: GainInputs): Computed<keyof GainInputs> {
  requirePositive(inputs, 'backsideTime_min', 'check the log')
  requirePositive(inputs, 'bareTime_min', 'check the log of the bare panel')
  return propagate(x => x.backsideTime_min - x.bareTime_min, inputs)
}

/**
 * Time gained per thickness of dry film.
 *
 * @returns time over thickness, min/mm
 * @throws DomainError when the thickness is not above 0
 */
export function gainPerFilm(inputs: {
  /** Time gained, min. */
  timeGained_min: Estimate
  /** Dry film thickness, mm. */
  dryFilm_mm: Estimate
}): Computed<'timeGained_min' | 'dryFilm_mm'> {
  requirePositive(inputs, 'dryFilm_mm', 'check the readings of the film')
  return propagate(x => x.timeGained_min / x.dryFilm_mm, inputs)
}

/**
 * Time gained per mass per area: of the film, or of the flake in it.
 *
 * @returns seconds for each gram per square metre, s·m²/g
 * @throws DomainError when the mass per area is not above 0
 */
export function gainPerMass<Mass extends 'filmMass_g_per_m2' | 'activeMass_g_per_m2'>(
  inputs: Record<'timeGained_min' | Mass, Estimate>,
  mass: Mass
): Computed<'timeGained_min' | Mass> {
  requirePositive(inputs, mass, 'check the film mass and the loading')
  return propagate(x => (S_PER_MIN * x.timeGained_min) / x[mass], inputs)
}
