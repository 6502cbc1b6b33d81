/**
 * Compressibility, recovery and resiliency of foil under a penetrator.
 *
 *     compressibility   C = 100 · (P − M) / P
 *     recovery          R = 100 · (B − M) / (P − M)
 *     resiliency        S = 100 · (B − M) / M
 *
 * P is the thickness under the preload, M under the total load, B once the load has been taken off. The
 * three are not independent: S = C · R / (100 − C), so that a figure reported elsewhere can be checked.
 *
 * Source: definitions of ASTM F36 (in words there); the identity follows from them.
 */

import { DomainError, requireAtMost, requirePositive } from '../metrology/domain.ts'
import { type Computed, type Estimate, propagate } from '../metrology/estimate.ts'

export const compressibilityBasis = {
  formula: 'C = (P − M) / P, P under preload, M under total load',
  source: 'ASTM F36, definition of compressibility'
} as const

export const recoveryBasis = {
  formula: 'R = (B − M) / (P − M), B once unloaded',
  source: 'ASTM F36, definition of recovery'
} as const

export const resiliencyBasis = {
  formula: 'S = (B − M) / M',
  source: 'ASTM F36, definition of resiliency; S = C · R / (1 − C) follows from the three'
} as const

export interface CompressionInputs {
  /** Thickness under the preload, mm. */
  preload_mm: Estimate
  /** Thickness under the total load, mm. */
  loaded_mm: Estimate
  /** Thickness once the total load was taken off, mm. */
  recovered_mm: Estimate
}

/**
 * Compressibility.
 *
 * @returns thickness lost under load, of that under the preload, %
 * @throws DomainError unless 0 < loaded ≤ recovered ≤ preload but for noise, and the piece gave way
 */
export function compressibility(inputs: CompressionInputs): Computed<keyof CompressionInputs> {
  requireOrder(inputs)
  return propagate(x => (100 * (x.preload_mm - x.loaded_mm)) / x.preload_mm, inputs)
}

/**
 * Recovery.
 *
 * @returns part of the compression that went back, %
 * @throws DomainError as compressibility does
 */
export function recovery(inputs: CompressionInputs): Computed<keyof CompressionInputs> {
  requireOrder(inputs)
  return propagate(
    x => (100 * (x.recovered_mm - x.loaded_mm)) / (x.preload_mm - x.loaded_mm),
    inputs
  )
}

/**
 * Resiliency.
 *
 * @returns thickness gained when unloaded, of that under load, %
 * @throws DomainError as compressibility does
 */
export function resiliency(inputs: CompressionInputs): Computed<keyof CompressionInputs> {
  requireOrder(inputs)
  return propagate(x => (100 * (x.recovered_mm - x.loaded_mm)) / x.loaded_mm, inputs)
}

/**
 * Resiliency that compressibility and recovery of one test lead to, %.
 *
 * @throws DomainError unless the compressibility is at least 0 and below 100
 */
export function resiliencyFrom(compressibility_percent: number, recovery_percent: number): number {
  if (!(compressibility_percent >= 0 && compressibility_percent < 100))
    throw new DomainError(
      'compressibility_percent',
      'at least 0 and below 100',
      compressibility_percent,
      'check the compressibility'
    )
  return (compressibility_percent * recovery_percent) / (100 - compressibility_percent)
}

function requireOrder(inputs: CompressionInputs): void {
  requirePositive(inputs, 'loaded_mm', 'check the reading under the total load')
  requireAtMost(inputs, 'loaded_mm', 'recovered_mm', 'foil springs back: check which is which')
  requireAtMost(inputs, 'recovered_mm', 'preload_mm', 'foil springs back in part only')
  if (!(inputs.preload_mm.value > inputs.loaded_mm.value))
    throw new DomainError(
      'preload_mm',
      `greater than loaded (${Number(inputs.loaded_mm.value.toPrecision(6))})`,
      inputs.preload_mm.value,
      'the total load presses the piece thinner: check both readings'
    )
}
