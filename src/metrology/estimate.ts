/**
 * Values with uncertainty, and the one routine that propagates it.
 *
 * An estimate is a value and a linear sum over independent causes. Two estimates that share a cause
 * (one balance's calibration, one titrant, one set of readings) are correlated by it, so the
 * correlation of any two figures, lots or blends follows without being declared.
 *
 * Source: JCGM 100:2008 (GUM), 5.2 and F.1.2.3: correlated inputs written as functions of
 * independent ones.
 */

import type { BudgetLineParts } from './budget-line.ts'

/** One independent reason why values may be off. */
export interface Cause {
  /** What happened, and to what: 'BAL-1 calibration', 'EB-26-041 expansion volume, reading 2'. */
  readonly name: string
  /** The budget line it is shown under. Causes of one pool share its degrees of freedom. */
  readonly pool: string
  /** Evaluated from scatter (A) or otherwise (B): GUM 3.3.4. */
  readonly kind: 'A' | 'B'
  /** Degrees of freedom of the pool; Infinity where the uncertainty is taken as known. */
  readonly df: number
  /** The budget line in parts; absent where English is all that is asked for. */
  readonly line?: BudgetLineParts
}

/** What one cause does to one estimate: signed standard uncertainty, in the estimate's unit. */
export interface Term {
  readonly cause: Cause
  readonly u: number
}

/** A value and its uncertainty, in the unit named by the field that holds it. */
export interface Estimate {
  readonly value: number
  /** By the cause's name. */
  readonly terms: ReadonlyMap<string, Term>
}

/** One input of a model, as the working shows it. */
export interface InputLine<Name extends string = string> {
  /** The input, by the name it has in the record. */
  readonly input: Name
  readonly value: number
  readonly u: number
  /** ∂y/∂x at the measured values, in units of y per unit of x. */
  readonly sensitivity: number
}

/** An estimate that a model computed, with the inputs it came from. */
export interface Computed<Name extends string = string> extends Estimate {
  readonly inputs: readonly InputLine<Name>[]
  /**
   * Size of what the first order leaves out, in the estimate's unit: Σ ½ |∂²y/∂xᵢ²| u²(xᵢ), as
   * JCGM 100:2008, 5.1.2 note. Beside u it says whether the budget may be read as linear.
   */
  readonly secondOrder?: number
}

/** Standard uncertainty of a limit ±a when every value inside is equally likely: a / √3. */
export const rectangular = (a: number): number => a / Math.sqrt(3)

/** Standard uncertainty of a limit ±a when values near the centre are likelier: a / √6. */
export const triangular = (a: number): number => a / Math.sqrt(6)

/** A value taken as known: a definition, a tabulated constant, a count. */
export const exact = (value: number): Estimate => ({ value, terms: new Map() })

/** A value with the causes that make it uncertain; causes of no effect are left out. */
export function estimate(value: number, terms: readonly Term[]): Estimate {
  const byName = new Map<string, Term>()
  for (const term of terms) addTerm(byName, term)
  return { value, terms: byName }
}

/**
 * An estimate uncertain by one cause of its own.
 *
 * @param line the cause's name in parts, where other languages ask for it
 */
export const measured = (
  value: number,
  u: number,
  name: string,
  df = Infinity,
  line?: BudgetLineParts
): Estimate =>
  estimate(value, [{ cause: { name, pool: name, kind: 'B', df, ...(line ? { line } : {}) }, u }])

/** Combined standard uncertainty, in the estimate's unit. */
export function uncertaintyOf({ terms }: Estimate): number {
  let variance = 0
  for (const { u } of terms.values()) variance += u * u
  return Math.sqrt(variance)
}

/** What a pool of causes contributes to an estimate. */
export interface BudgetLine {
  readonly pool: string
  /** `pool` in parts. */
  readonly line?: BudgetLineParts
  readonly kind: 'A' | 'B'
  /** Standard uncertainty it contributes, in the estimate's unit, never negative. */
  readonly u: number
  readonly df: number
  /** Its part of the variance, 0 to 1. */
  readonly share: number
}

interface Pool {
  readonly cause: Cause
  variance: number
}

/** The causes of an estimate by pool. */
function poolsOf({ terms }: Estimate): Pool[] {
  const pools = new Map<string, Pool>()
  for (const { cause, u } of terms.values()) {
    const pool = pools.get(cause.pool)
    if (pool) pool.variance += u * u
    else pools.set(cause.pool, { cause, variance: u * u })
  }
  return [...pools.values()]
}

const totalOf = (pools: readonly Pool[]) => pools.reduce((sum, { variance }) => sum + variance, 0)

/**
 * Part of the variance that difference quotients and floats leave of nothing: a calibration that cancels.
 * What counts for less than a ten-millionth of the uncertainty cannot be told from it.
 */
const NOTHING = 1e-14

/** The uncertainty budget: one line a pool, largest first; none for what cancels. */
export function budgetOf(estimate: Estimate): BudgetLine[] {
  const pools = poolsOf(estimate)
  const total = totalOf(pools)
  return pools
    .filter(({ variance }) => variance > NOTHING * total)
    .map(({ cause: { pool, line, kind, df }, variance }) => ({
      pool,
      ...(line ? { line } : {}),
      kind,
      df,
      u: Math.sqrt(variance),
      share: variance / total
    }))
    .sort((a, b) => b.u - a.u || (a.pool < b.pool ? -1 : 1))
}

/**
 * Effective degrees of freedom by the Welch–Satterthwaite formula, Infinity where every pool's are.
 *
 * Source: JCGM 100:2008, G.4.1, equation (G.2b).
 */
export function degreesOfFreedom(estimate: Estimate): number {
  const pools = poolsOf(estimate)
  const variance = totalOf(pools)
  const denominator = pools.reduce(
    (sum, { cause, variance }) => sum + (variance * variance) / cause.df,
    0
  )
  return denominator === 0 ? Infinity : (variance * variance) / denominator
}

/** Half width of the difference quotient, in standard uncertainties of the input. */
const STEP = 1 / 64

/**
 * Its least half width, as part of the value: the square root of a float's precision. Below it
 * rounding drowns the difference; far above it a small difference of large masses would bend.
 */
const LEAST_STEP = 2 ** -26

/**
 * Evaluate `model` at the inputs' values and propagate their uncertainties to first order, input
 * correlations included: each cause's effect on y is Σ ∂y/∂xᵢ times its effect on xᵢ.
 *
 * The derivative's step scales with the input's uncertainty, so a reading of zero has one too. An
 * exact input takes no derivative: it cannot contribute.
 *
 * Source: JCGM 100:2008, 5.1.2 and 5.2.2; 5.1.3 note 2 for the numerical derivative.
 */
export function propagate<Name extends string>(
  model: (inputs: Record<Name, number>) => number,
  inputs: Record<Name, Estimate>
): Computed<Name> {
  const names = Object.keys(inputs) as Name[]
  const values = {} as Record<Name, number>
  for (const name of names) values[name] = inputs[name].value
  const moved = { ...values }
  const terms = new Map<string, Term>()
  const value = model(values)
  let secondOrder = 0
  const lines = names.map(input => {
    const u = uncertaintyOf(inputs[input])
    const step = Math.max(STEP * u, LEAST_STEP * Math.abs(values[input]))
    const { above, below } =
      u === 0 ? { above: value, below: value } : aside(model, moved, input, step)
    const sensitivity = u === 0 ? 0 : (above - below) / (2 * step)
    if (u > 0) secondOrder += (Math.abs(above + below - 2 * value) / 2) * (u / step) ** 2
    for (const { cause, u } of inputs[input].terms.values())
      addTerm(terms, { cause, u: sensitivity * u })
    return { input, value: values[input], u, sensitivity }
  })
  return { value, terms, inputs: lines, secondOrder }
}

/** The model with one input a step up, and a step down; the input is put back where it was. */
function aside<Name extends string>(
  model: (inputs: Record<Name, number>) => number,
  inputs: Record<Name, number>,
  input: Name,
  step: number
): { above: number; below: number } {
  const value = inputs[input]
  inputs[input] = value + step
  const above = model(inputs)
  inputs[input] = value - step
  const below = model(inputs)
  inputs[input] = value
  return { above, below }
}

/** Half a unit of u's second digit, the tolerance of JCGM 101:2008, 7.9.2, for two digits. */
function toleranceFor(u: number): number {
  const place = Math.floor(Math.log10(u)) - 1
  return 0.5 * Number(`1e${place}`)
}

/** Whether the first order gives an estimate's uncertainty to two digits. */
export function isNearlyLinear(computed: Computed): boolean {
  const u = uncertaintyOf(computed)
  return u === 0 || (computed.secondOrder ?? 0) <= toleranceFor(u)
}

function addTerm(terms: Map<string, Term>, term: Term): void {
  const { cause, u } = term
  if (u === 0) return
  const known = terms.get(cause.name)
  terms.set(cause.name, known ? { cause, u: u + known.u } : term)
}
