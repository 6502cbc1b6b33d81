/**
 * Factors k of normal tolerance intervals, mean and standard deviation both unknown: x̄ ± k·s holds
 * at least the part p of a normal population with confidence γ.
 *
 * Both are exact: the probability that the interval covers enough is integrated, and k found where it
 * equals γ. The integrands are smooth and die out on both sides, where the trapezoid rule with an even
 * step is good to the last digits.
 *
 * Source: ISO 16269-6:2014 (definition; tables from memory, not checked against the print);
 * NIST/SEMATECH e-Handbook, 7.2.6.3, for the approximations these replace.
 */

import chisquareCdf from '@stdlib/stats-base-dists-chisquare-cdf'
import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { crossing } from './root.ts'
import { sum } from './sample.ts'

/** What a tolerance interval shall hold, and how surely; both above 0.5 and below 1. */
export interface Coverage {
  /** Part of the population inside, p. */
  readonly coverage: number
  /** Probability that the interval does hold that part, γ. */
  readonly confidence: number
}

const phi = (z: number) => normalCdf(z, 0, 1)

/**
 * Factor for one limit: the part p of the population lies below x̄ + k·s (or above x̄ − k·s).
 *
 * @param n figures, at least 2
 * @throws RangeError for fewer figures or probabilities outside (0.5, 1)
 */
export const oneSidedFactor = (n: number, question: Coverage): number =>
  worked('one', n, question, () => findOneSided(n, question))

function findOneSided(n: number, { coverage, confidence }: Coverage): number {
  const quantile = normalQuantile(coverage, 0, 1)
  const nodes = scatterNodes(n - 1)
  const whole = sum(nodes.map(({ weight }) => weight))
  const reached = (k: number) =>
    sum(nodes.map(({ ratio, weight }) => weight * phi(Math.sqrt(n) * (k * ratio - quantile)))) /
    whole
  return crossing(k => reached(k) - confidence, 1)
}

/**
 * Factor for both limits at once: the part p of the population lies within x̄ ± k·s, wherever.
 *
 * @param n figures, at least 2
 * @throws RangeError for fewer figures or probabilities outside (0.5, 1)
 */
export const twoSidedFactor = (n: number, question: Coverage): number =>
  worked('two', n, question, () => findTwoSided(n, question))

function findTwoSided(n: number, { coverage, confidence }: Coverage): number {
  const df = n - 1
  const nodes = meanNodes(n, coverage)
  const whole = sum(nodes.map(({ weight }) => weight))
  const reached = (k: number) =>
    sum(nodes.map(({ reach, weight }) => weight * (1 - chisquareCdf(df * (reach / k) ** 2, df)))) /
    whole
  return crossing(k => reached(k) - confidence, normalQuantile((1 + coverage) / 2, 0, 1))
}

/** Factors found before: quantities of one grade have the same number of lots over and over. */
const known = new Map<string, number>()

function worked(sides: string, n: number, question: Coverage, find: () => number): number {
  requireSample(n, question)
  const key = `${sides} ${n} ${question.coverage} ${question.confidence}`
  const factor = known.get(key) ?? find()
  known.set(key, factor)
  return factor
}

function requireSample(n: number, question: Coverage): void {
  if (!(Number.isInteger(n) && n >= 2))
    throw new RangeError('a tolerance interval requires at least 2 figures')
  requireProbabilities(question)
}

/** Throw RangeError unless both lie above 0.5, where every factor is above 0, and below 1. */
export function requireProbabilities({ coverage, confidence }: Coverage): void {
  for (const part of [coverage, confidence])
    if (!(part > 0.5 && part < 1))
      throw new RangeError('coverage and confidence lie above 0.5 and below 1')
}

/** Weights below this part of the greatest change no digit of a float. */
const NOTHING = 1e-19

/** Steps in one width of the weights' peak: the trapezoid rule then errs by less than 10⁻³⁰. */
const FINENESS = 3

/** Widest step of ln(s/σ): with one degree of freedom the density is smooth on that scale only. */
const WIDEST = 0.1

/**
 * s/σ for `df` degrees of freedom with its density, over even steps of ln(s/σ):
 * ν·ln(s/σ) − ν·(s/σ)²/2, less its greatest value.
 */
function scatterNodes(df: number): { ratio: number; weight: number }[] {
  const step = Math.min(WIDEST, 1 / Math.sqrt(2 * df) / FINENESS)
  const at = (index: number) => {
    const ratio = Math.exp(index * step)
    return { ratio, weight: Math.exp(df * (index * step - (ratio * ratio - 1) / 2)) }
  }
  return [...outward(at, -1), at(0), ...outward(at, 1)]
}

function outward<Node extends { weight: number }>(at: (index: number) => Node, direction: 1 | -1) {
  const nodes: Node[] = []
  for (let index = direction; at(index).weight > NOTHING; index += direction) nodes.push(at(index))
  return nodes
}

/** How far x̄ lies from μ with its weight, and how far either side of x̄ one must go to hold p. */
function meanNodes(n: number, coverage: number): { reach: number; weight: number }[] {
  const at = (index: number) => {
    const z = index / FINENESS
    return { reach: reachFrom(z / Math.sqrt(n), coverage), weight: Math.exp((-z * z) / 2) }
  }
  // Left of the middle all is as on its right.
  return [{ ...at(0), weight: 0.5 }, ...outward(at, 1)]
}

/** Half width about an off-centre point that holds the part p of a standard normal population. */
const reachFrom = (offset: number, coverage: number): number =>
  crossing(
    reach => phi(offset + reach) - phi(offset - reach) - coverage,
    normalQuantile((1 + coverage) / 2, 0, 1)
  )
