/**
 * Gas that flake gives off when it is heated past its onset: bounds for ventilation, not predictions.
 *
 *     gas volume       V = (m · L / M(H2O)) · Vm       as though all that leaves were water vapour
 *     sulfur dioxide   m = m flake · w(S) · M(SO2) / M(S)    as though all sulfur left as it
 *     worst in a room  c = m / V(room)                  all at once, no air changed, evenly mixed
 *
 * Water is the lightest gas the flake gives off in quantity, so its volume bounds theirs. Where no sulfur
 * figure is known, all that leaves is taken for sulfuric acid. Near the furnace concentrations are higher
 * than evenly mixed. No figure here says that a room may be worked in: local limits and competent people
 * decide that.
 *
 * Source: stoichiometry, molar masses; molar volume of an ideal gas at 25 °C and 101.325 kPa.
 */

import { requireNotNegative, requirePercent, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

/** R · 298.15 K / 101325 Pa. */
export const MOLAR_VOLUME_L = (8.314462618 * 298.15) / 101.325

const SO2_PER_S = molarMass_g_per_mol('SO2') / molarMass_g_per_mol('S')
const S_PER_ACID = molarMass_g_per_mol('S') / molarMass_g_per_mol('H2SO4')
const MG_PER_G = 1000

export const gasBasis = {
  formula: 'V = m · L / M(H2O) · V_m, V_m 24.465 L/mol at 25 °C',
  source: 'upper bound: as though all that leaves were water vapour'
}

export const sulfurDioxideBasis = {
  formula: 'm(SO2) = m · w(S) · M(SO2) / M(S)',
  source: 'upper bound: as though all sulfur left as sulfur dioxide'
}

export const roomBasis = {
  formula: 'c = m / V(room)',
  source:
    'upper bound of an even mixture: all at once, no air changed; nearer the source it is more'
}

export interface GasInputs {
  /** Flake heated, g. */
  flake_g: Estimate
  /** What it loses, of its own mass, %. */
  loss_percent: Estimate
}

/**
 * Gas given off, as a volume at 25 °C.
 *
 * @returns upper bound, L
 * @throws DomainError when the flake is not above 0 or the loss is outside 0 to below 100
 */
export function gasVolume(inputs: GasInputs): Computed<keyof GasInputs> {
  requireGas(inputs)
  return propagate(
    x => ((x.flake_g * x.loss_percent) / 100 / molarMass_g_per_mol('H2O')) * MOLAR_VOLUME_L,
    inputs
  )
}

/**
 * Sulfur dioxide given off where no sulfur figure is known: all that leaves as sulfuric acid.
 *
 * @returns upper bound, g
 * @throws DomainError as gasVolume does
 */
export function sulfurDioxideOfLoss(inputs: GasInputs): Computed<keyof GasInputs> {
  requireGas(inputs)
  return propagate(x => ((x.flake_g * x.loss_percent) / 100) * S_PER_ACID * SO2_PER_S, inputs)
}

export interface SulfurInputs {
  /** Flake heated, g. */
  flake_g: Estimate
  /** Its sulfur, %. */
  sulfur_percent: Estimate
}

/**
 * Sulfur dioxide given off, from the flake's sulfur.
 *
 * @returns upper bound, g
 * @throws DomainError when the flake is not above 0 or the sulfur is outside 0 to below 100
 */
export function sulfurDioxide(inputs: SulfurInputs): Computed<keyof SulfurInputs> {
  requirePositive(inputs, 'flake_g', 'check the mass of flake')
  requirePercent(inputs, 'sulfur_percent', 'check the sulfur')
  return propagate(x => ((x.flake_g * x.sulfur_percent) / 100) * SO2_PER_S, inputs)
}

export interface RoomInputs {
  /** Gas set free, g. */
  gas_g: Estimate
  /** Volume of the room, m³. */
  room_m3: Estimate
}

/**
 * Worst concentration in a room without any ventilation.
 *
 * @returns mass concentration, mg/m³
 * @throws DomainError when the gas is below 0 or the room is not above 0
 */
export function worstInRoom(inputs: RoomInputs): Computed<keyof RoomInputs> {
  requireNotNegative(inputs, 'gas_g', 'check the mass of gas')
  requirePositive(inputs, 'room_m3', 'state the volume of the room')
  return propagate(x => (MG_PER_G * x.gas_g) / x.room_m3, inputs)
}

function requireGas(inputs: GasInputs): void {
  requirePositive(inputs, 'flake_g', 'check the mass of flake')
  requirePercent(inputs, 'loss_percent', 'check the loss on expansion')
}
