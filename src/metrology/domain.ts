/**
 * Inputs a model cannot take. The error names the input and what to do; whoever called the model
 * knows where in which record it was written.
 */

import { type Estimate, uncertaintyOf } from './estimate.ts'
import { inputParts } from './units.ts'

/** An input lies outside the range where the model holds. */
export class DomainError extends RangeError {
  override readonly name = 'DomainError'
  readonly input: string
  /** The rule it broke and what was found: 'must be greater than 0, got 0 g'. */
  readonly reason: string
  readonly hint: string

  constructor(input: string, rule: string, got: number, hint: string) {
    super(`${input} must be ${rule}, got ${Number(got.toPrecision(6))}`)
    this.input = input
    this.reason = `must be ${rule}, got ${withUnitOf(got, input)}`
    this.hint = hint
  }
}

/** A figure with the unit that the name of its input ends in: '11 g' of 'massIn_g'. */
export function withUnitOf(value: number, input: string): string {
  const { unit } = inputParts(input)
  return `${Number(value.toPrecision(6))}${unit && ` ${unit}`}`
}

/** Throw DomainError unless the named input is finite and above zero. */
export function requirePositive<Name extends string>(
  inputs: Record<Name, Estimate>,
  input: Name,
  hint: string
): void {
  const { value } = inputs[input]
  if (!(value > 0 && value < Infinity)) throw new DomainError(input, 'greater than 0', value, hint)
}

/** Throw DomainError unless the named input is finite and not below zero. */
export function requireNotNegative<Name extends string>(
  inputs: Record<Name, Estimate>,
  input: Name,
  hint: string
): void {
  const { value } = inputs[input]
  if (!(value >= 0 && value < Infinity)) throw new DomainError(input, 'at least 0', value, hint)
}

/** Standard uncertainties by which an honest reading may miss a bound that its true value keeps. */
const NOISE = 4

/** Throw DomainError unless the named input, in %, is at least 0 but for its noise, and below 100. */
export function requirePercent<Name extends string>(
  inputs: Record<Name, Estimate>,
  input: Name,
  hint: string
): void {
  const { value } = inputs[input]
  if (!(value >= -NOISE * uncertaintyOf(inputs[input]) && value < 100))
    throw new DomainError(input, 'at least 0 and below 100', value, hint)
}

/** An input as its reader knows it: 'massIn_g' → 'mass in'. */
export const inWords = (input: string): string =>
  input.replace(/_.*$/u, '').replace(/(?<=[a-z])[A-Z]/gu, letter => ` ${letter.toLowerCase()}`)

/** Throw DomainError where one input is above another that it cannot exceed, by more than noise. */
export function requireAtMost<Name extends string>(
  inputs: Record<Name, Estimate>,
  input: Name,
  ceiling: Name,
  hint: string
): void {
  const { value } = inputs[input]
  const most = inputs[ceiling].value
  const noise = NOISE * Math.hypot(uncertaintyOf(inputs[input]), uncertaintyOf(inputs[ceiling]))
  if (!(value <= most + noise))
    throw new DomainError(
      input,
      `at most ${inWords(ceiling)} (${withUnitOf(most, ceiling)})`,
      value,
      hint
    )
}
