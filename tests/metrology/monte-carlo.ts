/**
 * Propagation of distributions, to check the propagation of uncertainties by another route.
 *
 * Each independent cause is drawn once per trial, every model from the same numbers, and applied to every input it touches, so inputs that
 * share a cause are drawn correlated. All causes are drawn normal: the comparison is of the models'
 * derivatives and linearity, with degrees of freedom left out on both sides.
 *
 * Source: JCGM 101:2008, sections 7 and 8. Generator: xoshiro128**, a public domain algorithm (from
 * memory, not checked against the print), seeded with fixed words.
 */

import { expect } from 'vitest'
import { type Estimate, uncertaintyOf } from '../../src/metrology/estimate.ts'
import { sized } from '../thorough.ts'

export const DRAWS = 100_000

/** Of a model that takes ten times as long as others: for rows whose δ leaves room for it. */
export const FEWER_DRAWS = sized(40_000, DRAWS)

/** Uniform numbers in (0, 1), the same at every run. */
export function randomSource(seed = 20260314): () => number {
  let [a, b, c, d] = [seed >>> 0, 0x9e3779b9, 0x243f6a88, 0xb7e15162]
  const rotate = (x: number, k: number) => ((x << k) | (x >>> (32 - k))) >>> 0
  return () => {
    const result = Math.imul(rotate(Math.imul(b, 5) >>> 0, 7), 9) >>> 0
    const shifted = (b << 9) >>> 0
    c = (c ^ a) >>> 0
    d = (d ^ b) >>> 0
    b = (b ^ c) >>> 0
    a = (a ^ d) >>> 0
    c = (c ^ shifted) >>> 0
    d = rotate(d, 11)
    return (result + 0.5) / 4294967296
  }
}

/** Standard normal numbers, by the polar form of the logarithm of uniform ones. */
export function normalSource(uniform: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}

/** What the trials of a model came to. */
export interface Sample {
  readonly mean: number
  readonly u: number
  /** Ends of the probabilistically symmetric 95 % interval. */
  readonly low: number
  readonly high: number
}

/** Summary of trials: mean, standard deviation and the interval by counting (JCGM 101, 7.6, 7.7). */
export function summarise(trials: Float64Array): Sample {
  const n = trials.length
  const sorted = trials.toSorted()
  const mean = trials.reduce((sum, y) => sum + y, 0) / n
  const squares = trials.reduce((sum, y) => sum + (y - mean) * (y - mean), 0)
  const low = sorted[Math.round(0.025 * n)]!
  const high = sorted[Math.round(0.975 * n)]!
  return { mean, u: Math.sqrt(squares / (n - 1)), low, high }
}

/** The numbers every simulation starts from, drawn once however many models there are. */
const drawn = { next: normalSource(randomSource()), numbers: new Float64Array(0) }

/** The first standard normal numbers of the one sequence. */
function normals(count: number): Float64Array {
  const { next, numbers } = drawn
  if (numbers.length < count) {
    drawn.numbers = new Float64Array(count)
    drawn.numbers.set(numbers)
    for (let index = numbers.length; index < count; index++) drawn.numbers[index] = next()
  }
  return drawn.numbers
}

/** A drawn input has no uncertainty of its own. */
const exactly = new Map<string, never>()

/** Run a model over drawn inputs. */
export function simulate<Inputs extends { [Name in keyof Inputs]: Estimate }>(
  model: (inputs: Inputs) => Estimate,
  inputs: Inputs,
  draws = DRAWS
): Sample {
  const entries = Object.entries<Estimate>(inputs)
  const causes = [...new Set(entries.flatMap(([, { terms }]) => [...terms.keys()]))]
  const numbers = normals(draws * causes.length)
  const parts = entries.map(([name, { value, terms }]) => {
    const scales = [...terms].map(([cause, { u }]) => ({ u, at: causes.indexOf(cause) }))
    return { name, value, scales }
  })
  const trial = (_: unknown, index: number): number => {
    const first = index * causes.length
    const given: Record<string, Estimate> = {}
    for (const { name, value, scales } of parts) {
      let sum = value
      for (const { u, at } of scales) sum += u * numbers[first + at]!
      given[name] = { value: sum, terms: exactly }
    }
    return model(given as Inputs).value
  }
  return summarise(Float64Array.from({ length: draws }, trial))
}

/** Numerical tolerance of u stated with two significant digits: u = c·10^l gives δ = 0.5·10^l. */
export function toleranceOf(u: number): number {
  const exponent = Number(u.toExponential(1).split('e')[1])
  return 0.5 * Number(`1e${exponent - 1}`)
}

/**
 * Expect propagation to first order and trials to agree within δ, in u and in both interval ends.
 *
 * An end of the interval of 10⁵ trials scatters by 0.85 % of u (binomial count over the density at the
 * 2.5 % point), and δ is 5 % of u for a u of 10 in its last two digits but 0.5 % for one of 99. Rows are
 * therefore chosen with a u of 10 to 25, where δ is at least 2 % of u and the scatter cannot decide; a
 * row outside that fails here rather than pass or fail by luck.
 */
export function expectAgreement(computed: Estimate, sample: Sample): void {
  const u = uncertaintyOf(computed)
  const delta = toleranceOf(u)
  expect(delta / u, 'u must be 10 to 25 in its last two digits').toBeGreaterThanOrEqual(0.0199)
  expect(Math.abs(sample.u - u), 'standard uncertainty').toBeLessThanOrEqual(delta)
  const half = 1.959963984540054 * u
  expect(Math.abs(sample.low - (computed.value - half)), 'lower end').toBeLessThanOrEqual(delta)
  expect(Math.abs(sample.high - (computed.value + half)), 'upper end').toBeLessThanOrEqual(delta)
}

/** Expect a model's propagation to agree with trials of it. */
export function expectLinear<Inputs extends { [Name in keyof Inputs]: Estimate }>(
  model: (inputs: Inputs) => Estimate,
  inputs: Inputs,
  draws = DRAWS
): void {
  expectAgreement(model(inputs), simulate(model, inputs, draws))
}
