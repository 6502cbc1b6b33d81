/**
 * What a batch and its furnace run gained, lost and kept, by mass.
 *
 *     massYield         Y  = 100 · P / G
 *     uptakeDry         U  = 100 · (P · (1 − wP) / (G · (1 − wG)) − 1)
 *     uptakeWithoutSalt U  = 100 · (P · (1 − wP) · (1 − s) / (G · (1 − wG)) − 1)
 *     lossCeiling       Lc = 100 · U / (100 + U)
 *     carbonRecovery    R  = Y · (1 − L)
 *     trimYield         T  = 100 · S / W
 *     overallYield      O  = R · T
 *
 * G graphite charged, P product, W worms used, S saleable foil, w moisture, s leachable salt of the dry
 * product, L loss on expansion, all fractions here.
 *
 * Source: the definitions of these balances by mass.
 */

import {
  requireAtMost,
  requireNotNegative,
  requirePercent,
  requirePositive
} from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const massYieldBasis = {
  formula: 'Y = m product / m graphite',
  source: 'definition of a yield by mass'
}

export const uptakeDryBasis = {
  formula: 'U = m product · (1 − w product) / (m graphite · (1 − w graphite)) − 1, w moisture',
  source: 'mass gained by the graphite, both sides dry'
}

export const uptakeWithoutSaltBasis = {
  formula: 'U = m product · (1 − w product) · (1 − s) / (m graphite · (1 − w graphite)) − 1',
  source: 'mass gained by the graphite, both sides dry, less the salt s that leaches out'
}

export const lossCeilingBasis = {
  formula: 'L max = U / (1 + U)',
  source: 'loss on expansion if all that was taken up leaves and no carbon burns'
}

export const carbonRecoveryBasis = {
  formula: 'R = Y · (1 − L)',
  source: 'worms per graphite charged, from mass yield Y and loss on expansion L'
}

export const trimYieldBasis = {
  formula: 'T = m saleable / m worms',
  source: 'definition of a yield by mass'
}

export const overallYieldBasis = {
  formula: 'O = R · T',
  source: 'saleable foil per graphite charged, from recovery R and trim yield T'
}

export interface YieldInputs {
  /** Graphite charged, g. */
  graphite_g: Estimate
  /** Product, washed and dried, g. */
  product_g: Estimate
}

/**
 * Mass yield.
 *
 * @returns product per graphite charged, %
 * @throws DomainError when a mass is not above 0
 */
export function massYield(inputs: YieldInputs): Computed<keyof YieldInputs> {
  requireMasses(inputs)
  return propagate(x => (100 * x.product_g) / x.graphite_g, inputs)
}

export interface UptakeInputs extends YieldInputs {
  /** Moisture of the graphite charged, %. */
  graphiteMoisture_percent: Estimate
  /** Moisture of the product, %. */
  productMoisture_percent: Estimate
}

/**
 * Uptake: mass gained, both sides dry.
 *
 * @returns gain per dry graphite, %; below 0 where more was lost on the way than was taken up
 * @throws DomainError when a mass is not above 0 or a moisture is outside 0 to below 100
 */
export function uptakeDry(inputs: UptakeInputs): Computed<keyof UptakeInputs> {
  requireUptake(inputs)
  return propagate(x => 100 * (dryProduct_g(x) / dryGraphite_g(x) - 1), inputs)
}

export interface SaltInputs extends UptakeInputs {
  /** Salt and acid that leach out of the product, of its dry mass, %. */
  leachableSalt_percent: Estimate
}

/**
 * Uptake without what merely sticks to the product and leaches out.
 *
 * @returns gain per dry graphite, %
 * @throws DomainError as uptakeDry does, or when the salt is outside 0 to below 100
 */
export function uptakeWithoutSalt(inputs: SaltInputs): Computed<keyof SaltInputs> {
  requireUptake(inputs)
  requirePercent(inputs, 'leachableSalt_percent', 'check the leachable salt')
  return propagate(
    x => 100 * ((dryProduct_g(x) * (1 - x.leachableSalt_percent / 100)) / dryGraphite_g(x) - 1),
    inputs
  )
}

export interface CeilingInputs {
  /** Uptake, dry basis, %. */
  uptake_percent: Estimate
}

/**
 * Largest loss on expansion that needs no carbon to burn.
 *
 * @returns loss if all that was taken up leaves, of the mass put in, %
 * @throws DomainError when the uptake is below 0: nothing taken up, no ceiling
 */
export function lossCeiling(inputs: CeilingInputs): Computed<keyof CeilingInputs> {
  requireNotNegative(inputs, 'uptake_percent', 'product was lost before it was weighed')
  return propagate(x => (100 * x.uptake_percent) / (100 + x.uptake_percent), inputs)
}

export interface RecoveryInputs {
  /** Product per graphite charged, %. */
  massYield_percent: Estimate
  /** Loss on expansion, of the mass put in, %. */
  lossOnExpansion_percent: Estimate
}

/**
 * Recovery after expansion: above 100 % something taken up stayed, below it carbon was lost.
 *
 * @returns worms per graphite charged, %
 * @throws DomainError when the yield is not above 0 or the loss is outside 0 to below 100
 */
export function carbonRecovery(inputs: RecoveryInputs): Computed<keyof RecoveryInputs> {
  requireRecovery(inputs)
  return propagate(x => x.massYield_percent * (1 - x.lossOnExpansion_percent / 100), inputs)
}

export interface TrimInputs {
  /** Worms used, g. */
  worms_g: Estimate
  /** Foil fit for sale after trimming, g. */
  saleable_g: Estimate
}

/**
 * Trim yield.
 *
 * @returns saleable foil per worms used, %
 * @throws DomainError when no worms were used, or more foil came out than worms went in
 */
export function trimYield(inputs: TrimInputs): Computed<keyof TrimInputs> {
  requirePositive(inputs, 'worms_g', 'check the mass of worms used')
  requireNotNegative(inputs, 'saleable_g', 'check the mass of saleable foil')
  requireAtMost(inputs, 'saleable_g', 'worms_g', 'foil cannot outweigh its worms: check both')
  return propagate(x => (100 * x.saleable_g) / x.worms_g, inputs)
}

export interface OverallInputs {
  /** Worms per graphite charged, %. */
  carbonRecovery_percent: Estimate
  /** Saleable foil per worms used, %. */
  trimYield_percent: Estimate
}

/**
 * Overall yield along the chain of lots.
 *
 * @returns saleable foil per graphite charged, %
 * @throws DomainError when the recovery is not above 0 or the trim yield is below 0
 */
export function overallYield(inputs: OverallInputs): Computed<keyof OverallInputs> {
  requirePositive(inputs, 'carbonRecovery_percent', 'check the recovery after expansion')
  requireNotNegative(inputs, 'trimYield_percent', 'check the trim yield')
  return propagate(x => (x.carbonRecovery_percent * x.trimYield_percent) / 100, inputs)
}

const dryGraphite_g = (x: Record<keyof UptakeInputs, number>): number =>
  x.graphite_g * (1 - x.graphiteMoisture_percent / 100)

const dryProduct_g = (x: Record<keyof UptakeInputs, number>): number =>
  x.product_g * (1 - x.productMoisture_percent / 100)

function requireMasses(inputs: YieldInputs): void {
  const { graphite_g, product_g } = inputs
  requirePositive({ graphite_g }, 'graphite_g', 'check the mass of graphite charged')
  requirePositive({ product_g }, 'product_g', 'check the mass of the product')
}

function requireUptake(inputs: UptakeInputs): void {
  requireMasses(inputs)
  const { graphiteMoisture_percent, productMoisture_percent } = inputs
  const moistures = { graphiteMoisture_percent, productMoisture_percent }
  requirePercent(moistures, 'graphiteMoisture_percent', 'check the moisture of the graphite')
  requirePercent(moistures, 'productMoisture_percent', 'check the moisture of the product')
}

function requireRecovery({ massYield_percent, lossOnExpansion_percent }: RecoveryInputs): void {
  const inputs = { massYield_percent, lossOnExpansion_percent }
  requirePositive(inputs, 'massYield_percent', 'check the mass yield')
  requirePercent(inputs, 'lossOnExpansion_percent', 'check the loss on expansion')
}
