/**
 * Strength of a solution by its density.
 *
 * Density does not always tell it: that of sulfuric acid is greatest at 97 %, so from about 93.8 % on
 * every density belongs to two acids. Which one is meant is asked, never guessed.
 *
 * Source: the tables of density-tables.ts, read the other way.
 */

import { DomainError } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  exact,
  propagate,
  uncertaintyOf
} from '../metrology/estimate.ts'
import type { DensityTable } from './density-tables.ts'
import { densityAt, densityTables, doubtOf, requireTemperature, type Solute } from './solutions.ts'

/** Standard uncertainties by which a density may seem to lie beyond what it can tell. */
const NOISE = 2

export interface HydrometerInputs {
  /** Density, g/cm³. */
  density_g_per_cm3: Estimate
  /** Temperature of the solution, °C. */
  temperature_C: Estimate
}

/** A run of mass fractions over which density only rises, or only falls. */
interface Branch {
  readonly from_percent: number
  readonly to_percent: number
}

/** Where density turns: one branch, or two that meet at the greatest density. */
function branchesOf({ massFraction_percent: w, density_g_per_cm3: rho }: DensityTable): Branch[] {
  const greatest = rho.indexOf(Math.max(...rho))
  const ends = [0, greatest, w.length - 1]
  return ends.slice(1).flatMap((end, i) => {
    const start = ends[i]!
    return end > start ? [{ from_percent: w[start]!, to_percent: w[end]! }] : []
  })
}

/**
 * Mass fractions that a density can belong to: none, one, or two.
 *
 * @returns each mass fraction, %, rising; one where density tells it
 * @throws DomainError outside the temperatures of the table, or where the density is within its own
 *   uncertainty of the greatest there is, so that it tells next to nothing
 */
export function massFractions(
  solute: Solute,
  inputs: HydrometerInputs
): Computed<keyof HydrometerInputs | 'table'>[] {
  const table = densityTables[solute]
  requireTemperature(table, inputs.temperature_C)
  const all = { ...inputs, table: doubtOf(solute) }
  const noise =
    NOISE * Math.hypot(uncertaintyOf(inputs.density_g_per_cm3), uncertaintyOf(all.table))
  const branches = branchesOf(table)
  if (branches.length > 1) requireBelowGreatest(table, branches[0]!.to_percent, inputs, noise)
  return branches
    .filter(branch => reaches(table, branch, inputs, branches.length > 1 ? noise : 0))
    .map(branch =>
      propagate(x => fractionOn(table, branch, x.density_g_per_cm3 - x.table, x.temperature_C), all)
    )
}

/** Strengths a density can belong to, and whether anything between them has it too, as far as it tells. */
export interface Possible {
  readonly fractions_percent: readonly Estimate[]
  readonly between: boolean
}

/**
 * As massFractions, but that next to the greatest density both ends of what it can belong to are given.
 *
 * @throws DomainError outside the temperatures of the table
 */
export function possibleFractions(solute: Solute, inputs: HydrometerInputs): Possible {
  const table = densityTables[solute]
  const [first, second] = branchesOf(table)
  const { density_g_per_cm3: rho, temperature_C } = inputs
  requireTemperature(table, temperature_C)
  const noise = NOISE * Math.hypot(uncertaintyOf(rho), uncertaintyOf(doubtOf(solute)))
  const most = first ? densityAt(table, first.to_percent, temperature_C.value) : Infinity
  if (!second || rho.value <= most - noise || rho.value > most + noise)
    return { fractions_percent: massFractions(solute, inputs), between: false }
  const ends = [first!, second].map(branch =>
    exact(fractionOn(table, branch, most - noise, temperature_C.value))
  )
  return { fractions_percent: ends, between: true }
}

function requireBelowGreatest(
  table: DensityTable,
  greatest_percent: number,
  { density_g_per_cm3, temperature_C }: HydrometerInputs,
  noise: number
): void {
  const most = densityAt(table, greatest_percent, temperature_C.value)
  const { value } = density_g_per_cm3
  if (value > most - noise && value <= most + noise)
    throw new DomainError(
      'density_g_per_cm3',
      `below ${Number((most - noise).toPrecision(5))}: nearer to the greatest density it does not tell the strength`,
      value,
      'take the strength from the certificate, or titrate it'
    )
}

const endsAt = (table: DensityTable, { from_percent, to_percent }: Branch, t: number) =>
  [densityAt(table, from_percent, t), densityAt(table, to_percent, t)].sort((a, b) => a - b) as [
    number,
    number
  ]

/** Whether a branch holds a density, its lower end widened by what is not certain. */
function reaches(
  table: DensityTable,
  branch: Branch,
  { density_g_per_cm3: { value }, temperature_C }: HydrometerInputs,
  noise: number
): boolean {
  const [low, high] = endsAt(table, branch, temperature_C.value)
  const rising = branch.from_percent === 0
  return value >= low - (rising ? 0 : noise) && value <= high
}

/** Halvings of a branch: 100 % to below 1e-13. */
const HALVINGS = 50

function fractionOn(table: DensityTable, branch: Branch, rho: number, t: number): number {
  let [low, high] = [branch.from_percent, branch.to_percent]
  const rises = densityAt(table, high, t) > densityAt(table, low, t)
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2
    if (densityAt(table, middle, t) < rho === rises) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/**
 * The mass fraction a density belongs to.
 *
 * @param side which of two acids is meant, where a density belongs to two
 * @returns mass fraction of the solute, %
 * @throws DomainError where no solution of the table has that density, where two have and no side is
 *   named, and as massFractions does
 */
export function massFractionOf(
  solute: Solute,
  inputs: HydrometerInputs,
  side?: 'weaker' | 'stronger'
): Computed<keyof HydrometerInputs | 'table'> {
  const [weaker, stronger] = massFractions(solute, inputs)
  const { value } = inputs.density_g_per_cm3
  if (!weaker)
    throw new DomainError(
      'density_g_per_cm3',
      `a density that ${solute} has between 0 % and the end of its table`,
      value,
      'check the reading and its unit'
    )
  if (!stronger) return weaker
  if (side === undefined)
    throw new DomainError(
      'density_g_per_cm3',
      `told with its side: both ${shown(weaker)} % and ${shown(stronger)} % have it`,
      value,
      'say whether the weaker or the stronger one is meant, from the label or a titration'
    )
  return side === 'weaker' ? weaker : stronger
}

const shown = ({ value }: Estimate) => Number(value.toPrecision(4))
