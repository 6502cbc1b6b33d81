/**
 * Stoichiometry of graphite hydrogensulfate: what a stage would take up if every gallery were full.
 *
 *     C24n⁺ · HSO4⁻ · x H2SO4        n the stage, x about 2 to 2.5
 *
 * A product that was washed holds less: the uptake of a batch is no proof of a stage, but no batch can
 * exceed stage 1.
 *
 * Source: the composition as textbooks give it for the sulfuric acid compound (from memory, not checked
 * against the print); arithmetic from the atomic weights.
 */

import { DomainError } from '../metrology/domain.ts'
import { molarMass_g_per_mol } from './molar-mass.ts'

/** Carbon atoms that carry one charge in stage 1. */
const CARBON_PER_CHARGE = 24

/** Neutral acid beside each anion, as reported: the lower and the higher figure. */
export const acidPerAnion = [2, 2.5] as const

/**
 * Uptake of a filled stage.
 *
 * @param stage number of graphite layers between two filled galleries: 1, 2, 3 …
 * @param x mol of neutral H2SO4 per mol of HSO4⁻
 * @returns guest per graphite, %
 * @throws DomainError unless the stage is a whole number from 1 and x is at least 0
 */
export function stageUptake_percent(stage: number, x: number): number {
  return (100 * guest_g_per_mol(x)) / host_g_per_mol(stage)
}

/** Mass yield of a filled stage: product per graphite, %. Errors as stageUptake_percent. */
export const stageYield_percent = (stage: number, x: number): number =>
  100 + stageUptake_percent(stage, x)

/**
 * Guest as part of the product, %: the largest loss on expansion without carbon burned. Errors as
 * stageUptake_percent.
 */
export function guestFraction_percent(stage: number, x: number): number {
  const guest = guest_g_per_mol(x)
  return (100 * guest) / (host_g_per_mol(stage) + guest)
}

/** Sulfur as part of the product, %. Errors as stageUptake_percent. */
export function sulfurFraction_percent(stage: number, x: number): number {
  const sulfur = (1 + x) * molarMass_g_per_mol('S')
  return (100 * sulfur) / (host_g_per_mol(stage) + guest_g_per_mol(x))
}

/** Mass yields of a filled stage 1, %, for each figure of `acidPerAnion`: no batch can exceed them. */
export const yieldCeilings_percent: readonly number[] = acidPerAnion.map(x =>
  stageYield_percent(1, x)
)

function host_g_per_mol(stage: number): number {
  if (!(Number.isInteger(stage) && stage >= 1))
    throw new DomainError('stage', 'a whole number from 1', stage, 'stages are counted 1, 2, 3')
  return CARBON_PER_CHARGE * stage * molarMass_g_per_mol('C')
}

function guest_g_per_mol(x: number): number {
  if (!(x >= 0 && x < Infinity))
    throw new DomainError('x', 'at least 0', x, 'x is about 2 to 2.5 for sulfuric acid')
  return molarMass_g_per_mol('HSO4') + x * molarMass_g_per_mol('H2SO4')
}
