/**
 * Solutions by their strength: density, the mass of a volume, what is dissolved in it.
 *
 *     density         ρ(w, t) = ρ20(w) − (t − 20 °C) · fall(w)
 *     massOfVolume    m = ρ · V
 *     volumeOfMass    V = m / ρ
 *     concentration   c = 1000 · ρ · w / M
 *
 * The tables are linear between their nodes.
 *
 * Source: definitions of density and mass fraction; tables and their sources in density-tables.ts.
 */

import { DomainError, requirePositive } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  measured,
  propagate,
  rectangular
} from '../metrology/estimate.ts'
import { linearAt } from '../metrology/interpolate.ts'
import {
  ammonia,
  type DensityTable,
  hydrogenPeroxide,
  nitricAcid,
  sodiumHydroxide,
  sulfuricAcid
} from './density-tables.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

/** Solutions with a density table, by the name their solute has in records. */
export const densityTables = {
  'sulfuric acid': sulfuricAcid,
  'nitric acid': nitricAcid,
  ammonia,
  'hydrogen peroxide': hydrogenPeroxide,
  'sodium hydroxide': sodiumHydroxide
} as const satisfies Record<string, DensityTable>
export type Solute = keyof typeof densityTables

export const isSolute = (name: string): name is Solute => Object.hasOwn(densityTables, name)

const formulas: Record<Solute, string> = {
  'sulfuric acid': 'H2SO4',
  'nitric acid': 'HNO3',
  ammonia: 'NH3',
  'hydrogen peroxide': 'H2O2',
  'sodium hydroxide': 'NaOH'
}

export const densityBasis = (solute: Solute) => ({
  formula: 'ρ(w, t) = ρ20(w) − (t − 20 °C) · fall(w)',
  source: densityTables[solute].source
})

const REFERENCE_C = 20
const ML_PER_L = 1000

/**
 * Density of a table at a mass fraction and temperature, g/cm³; outside it, its outer piece drawn longer.
 */
export function densityAt(table: DensityTable, w: number, t: number): number {
  const { massFraction_percent, density_g_per_cm3, fall } = table
  const at20 = linearAt(massFraction_percent, density_g_per_cm3, w)
  return at20 - (t - REFERENCE_C) * linearAt(fall.massFraction_percent, fall.per_K, w)
}

/** The table's own error, common to every figure taken from it. */
export const doubtOf = (solute: Solute): Estimate =>
  measured(0, rectangular(densityTables[solute].limit_g_per_cm3), `density table of ${solute}`)

export interface DensityInputs {
  /** Mass fraction of the solute, %; ammonia as NH3. */
  massFraction_percent: Estimate
  /** Temperature of the solution, °C. */
  temperature_C: Estimate
}

/**
 * Density of a solution.
 *
 * @returns density, g/cm³
 * @throws DomainError outside the mass fractions and temperatures of the table
 */
export const solutionDensity = (
  solute: Solute,
  inputs: DensityInputs
): Computed<keyof DensityInputs | 'table'> => byDensity(solute, inputs, rho => rho)

/** A figure that follows from a solution's density, the table's own error among its causes. */
function byDensity<Name extends string>(
  solute: Solute,
  inputs: Record<Name | keyof DensityInputs, Estimate>,
  figure: (rho: number, inputs: Record<Name | keyof DensityInputs, number>) => number
): Computed<Name | keyof DensityInputs | 'table'> {
  const table = densityTables[solute]
  requireWithin(table, inputs)
  const all: Record<Name | keyof DensityInputs | 'table', Estimate> = {
    ...inputs,
    table: doubtOf(solute)
  }
  return propagate(
    x => figure(densityAt(table, x.massFraction_percent, x.temperature_C) + x.table, x),
    all
  )
}

function requireWithin(table: DensityTable, inputs: DensityInputs): void {
  const { massFraction_percent: w, temperature_C } = inputs
  const [least, most] = [table.massFraction_percent[0]!, table.massFraction_percent.at(-1)!]
  if (!(w.value >= least && w.value <= most))
    throw new DomainError(
      'massFraction_percent',
      `from ${least} to ${most}, where the density table ends`,
      w.value,
      'weigh it instead, or check the strength'
    )
  requireTemperature(table, temperature_C)
}

export function requireTemperature({ from_C, to_C }: DensityTable, { value }: Estimate): void {
  if (!(value >= from_C && value <= to_C))
    throw new DomainError(
      'temperature_C',
      `from ${from_C} to ${to_C}, where the density table holds`,
      value,
      'bring it to room temperature, or weigh it instead'
    )
}

export interface VolumeInputs extends DensityInputs {
  /** Volume of the solution, mL. */
  volume_mL: Estimate
}

/**
 * Mass of a volume of solution.
 *
 * @returns mass, g
 * @throws DomainError when the volume is not above 0, and as solutionDensity does
 */
export function massOfVolume(
  solute: Solute,
  inputs: VolumeInputs
): Computed<keyof VolumeInputs | 'table'> {
  requirePositive(inputs, 'volume_mL', 'check the volume')
  return byDensity<keyof VolumeInputs>(solute, inputs, (rho, x) => rho * x.volume_mL)
}

export interface MassInputs extends DensityInputs {
  /** Mass of the solution, g. */
  mass_g: Estimate
}

/**
 * Volume of a mass of solution.
 *
 * @returns volume, mL
 * @throws DomainError when the mass is not above 0, and as solutionDensity does
 */
export function volumeOfMass(
  solute: Solute,
  inputs: MassInputs
): Computed<keyof MassInputs | 'table'> {
  requirePositive(inputs, 'mass_g', 'check the mass')
  return byDensity<keyof MassInputs>(solute, inputs, (rho, x) => x.mass_g / rho)
}

/**
 * Amount concentration of a solution.
 *
 * @returns solute per volume, mol/L
 * @throws DomainError as solutionDensity does
 */
export function concentration(
  solute: Solute,
  inputs: DensityInputs
): Computed<keyof DensityInputs | 'table'> {
  const molarMass = molarMass_g_per_mol(formulas[solute])
  return byDensity(
    solute,
    inputs,
    (rho, x) => (ML_PER_L * rho * (x.massFraction_percent / 100)) / molarMass
  )
}
