/**
 * Whether figures can be taken as normal: the Anderson–Darling test, mean and standard deviation
 * judged from the sample itself.
 *
 * Sources: T. W. Anderson and D. A. Darling, JASA 49 (1954) 765–769; p-value by D'Agostino and
 * Stephens, Goodness-of-Fit Techniques (1986), table 4.9 (coefficients from memory, not checked
 * against the print); NIST/SEMATECH e-Handbook, 1.3.5.14.
 */

import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import { sampleOf, sum } from './sample.ts'

export interface Normality {
  readonly n: number
  /** A². */
  readonly statistic: number
  /** A² corrected for the sample's size: A²·(1 + 0.75/n + 2.25/n²). */
  readonly corrected: number
  /** Chance of a normal sample lying at least as far from normal, 0 to 1. */
  readonly p: number
}

/** Fewest figures for which the p-value holds. */
export const FEWEST_FOR_NORMALITY = 8

/** Nearest a probability is let to 0 and 1, so that a figure far out keeps a logarithm. */
const NEAREST = 1e-300

/**
 * The test; absent where nothing scatters. Figures rounded coarsely look less normal than they are.
 *
 * @throws RangeError for fewer than 8 figures
 */
export function andersonDarling(values: readonly number[]): Normality | undefined {
  const { n, mean, s } = sampleOf(values)
  if (n < FEWEST_FOR_NORMALITY) throw new RangeError('the test requires at least 8 figures')
  if (s === 0) return undefined
  const z = values.map(value => (value - mean) / s).sort((a, b) => a - b)
  const logBelow = (x: number) => Math.log(Math.max(NEAREST, normalCdf(x, 0, 1)))
  const terms = z.map((x, index) => (2 * index + 1) * (logBelow(x) + logBelow(-z[n - 1 - index]!)))
  const statistic = -n - sum(terms) / n
  const corrected = statistic * (1 + 0.75 / n + 2.25 / (n * n))
  return { n, statistic, corrected, p: probabilityOf(corrected) }
}

/** Pieces of the p-value by A² corrected, each up to its bound; `tail` where p itself is near 0. */
const pieces = [
  { upTo: 0.2, tail: false, a: -13.436, b: 101.14, c: -223.73 },
  { upTo: 0.34, tail: false, a: -8.318, b: 42.796, c: -59.938 },
  { upTo: 0.6, tail: true, a: 0.9177, b: -4.279, c: -1.38 },
  { upTo: 13, tail: true, a: 1.2937, b: -5.709, c: 0.0186 }
]

/** Beyond the last piece its parabola would rise again; p has 31 zeros there. */
function probabilityOf(x: number): number {
  const piece = pieces.find(({ upTo }) => x <= upTo)
  if (!piece) return 0
  const part = Math.exp(piece.a + piece.b * x + piece.c * x * x)
  return Math.min(1, piece.tail ? part : 1 - part)
}
