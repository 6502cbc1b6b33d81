/**
 * Sieve analysis: what a stack of sieves retains of a sample.
 *
 *     retained on sieve k   R = 100 · Σ(m on k and coarser) / Σm       of the mass recovered
 *     loss                  L = 100 · (m charged − Σm) / m charged
 *     size at p % passing   ln d = ln a + (p − Pa) / (Pb − Pa) · (ln b − ln a)
 *
 * a and b are the apertures next to each other between which the passing rises through p, from Pa to
 * Pb. Where that lies outside the stack nothing is extrapolated: the size is not determined. A figure
 * retained on a sieve is defined by that sieve; a size in µm also carries how far the mean aperture of a
 * sieve may be off.
 *
 * Source: definitions as in ISO 2591-1; interpolation linear in the logarithm of the aperture: common
 * practice, no source. Tolerance of apertures: ISO 3310-1, in metrology/sieves.ts.
 */

import { DomainError, requireNotNegative, requirePositive } from '../metrology/domain.ts'
import {
  type Computed,
  type Estimate,
  measured,
  propagate,
  rectangular,
  uncertaintyOf
} from '../metrology/estimate.ts'
import type { Sieve } from '../metrology/sieves.ts'

export const retainedBasis = {
  formula: 'R = (Σ m coarser) / (Σ m recovered), coarser what lies on the sieve and above it',
  source: 'definition of the cumulative oversize, as in ISO 2591-1'
} as const

export const sieveLossBasis = {
  formula: 'L = (m charged − Σ m recovered) / m charged',
  source: 'definition of the loss on sieving, as in ISO 2591-1'
} as const

export const sieveSizeBasis = {
  formula: 'ln d = ln a + (p − P(a)) / (P(b) − P(a)) · (ln b − ln a)',
  source:
    'passing interpolated linearly in the logarithm of the aperture, between neighbouring sieves: common practice, no source; tolerance of apertures from ISO 3310-1'
} as const

/** One run of the stack. */
export interface SieveRun {
  /** Sample put on the top sieve, g. */
  readonly charged_g: Estimate
  /** Found on each sieve, coarsest first, g. */
  readonly retained_g: readonly Estimate[]
  /** Found in the pan, g. */
  readonly pan_g: Estimate
}

/** Standard uncertainties by which a run may honestly weigh more than was charged. */
const NOISE = 4

/**
 * Retained on a sieve and all coarser ones.
 *
 * @param stack coarsest first
 * @returns part of the mass recovered, %
 * @throws DomainError unless the run has one mass a sieve, none below 0 and some above it, and no more
 *   than was charged; RangeError for a sieve outside the stack
 */
export function retainedOn(run: SieveRun, stack: readonly Sieve[], on: Sieve): Computed {
  const index = stack.indexOf(on)
  if (index < 0) throw new RangeError('the sieve is not in the stack')
  return propagate(x => 100 - passingOf(x, stack)[index]!, massesOf(run, stack))
}

/**
 * What was lost in sieving.
 *
 * @returns part of the mass charged, %; below 0 where a little more was found than charged
 * @throws DomainError as retainedOn does
 */
export function sieveLoss(run: SieveRun, stack: readonly Sieve[]): Computed {
  const inputs = { charged_g: run.charged_g, ...massesOf(run, stack) }
  return propagate(x => {
    const { charged_g, ...found } = x as typeof x & { charged_g: number }
    return 100 * (1 - sum(Object.values(found)) / charged_g)
  }, inputs)
}

/**
 * Size that a part of the sample is finer than.
 *
 * @param passing_percent the part: 50 for d50
 * @returns size, µm; undefined where it lies outside the stack
 * @throws DomainError as retainedOn does
 */
export function sizeAt(
  run: SieveRun,
  stack: readonly Sieve[],
  passing_percent: number
): Computed | undefined {
  const masses = massesOf(run, stack)
  const values = Object.fromEntries(Object.entries(masses).map(([key, { value }]) => [key, value]))
  const passing = passingOf(values, stack)
  const upper = passing.findLastIndex(part => part >= passing_percent)
  if (upper < 0 || upper + 1 >= stack.length) return undefined
  const [coarse, fine] = [stack[upper]!, stack[upper + 1]!]
  const inputs = { ...masses, [sizeKey(coarse)]: aperture(coarse), [sizeKey(fine)]: aperture(fine) }
  return propagate(x => {
    const parts = passingOf(x, stack)
    const [above, below] = [parts[upper]!, parts[upper + 1]!]
    const [a, b] = [Math.log(x[sizeKey(fine)]!), Math.log(x[sizeKey(coarse)]!)]
    return Math.exp(a + ((passing_percent - below) / (above - below)) * (b - a))
  }, inputs)
}

const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0)

const massKey = ({ aperture_um }: Sieve) => `on ${aperture_um} µm_g`
const sizeKey = ({ aperture_um }: Sieve) => `aperture ${aperture_um} µm_um`

const aperture = ({ aperture_um, tolerance_um }: Sieve): Estimate =>
  measured(
    aperture_um,
    rectangular(tolerance_um),
    `mean aperture of sieve ${aperture_um} µm`,
    Infinity,
    {
      is: 'aperture',
      aperture_um
    }
  )

/** Passing each sieve, % of the mass recovered, coarsest first. */
function passingOf(masses: Readonly<Record<string, number>>, stack: readonly Sieve[]): number[] {
  const found = stack.map(one => masses[massKey(one)]!)
  const all = sum(found) + masses['pan_g']!
  return found.map((_, index) => 100 * (1 - sum(found.slice(0, index + 1)) / all))
}

/** Masses found, by name; refused where they cannot be of one run of this stack. */
function massesOf(run: SieveRun, stack: readonly Sieve[]): Record<string, Estimate> {
  const { charged_g, retained_g, pan_g } = run
  requirePositive({ charged_g }, 'charged_g', 'check the mass put on the stack')
  for (const one of retained_g)
    requireNotNegative({ retained_g: one }, 'retained_g', 'check what each sieve held')
  requireNotNegative({ pan_g }, 'pan_g', 'check what the pan held')
  if (retained_g.length !== stack.length)
    throw new DomainError(
      'retained_g',
      `one mass for each of ${stack.length} sieves`,
      retained_g.length,
      'write 0 g for a sieve that held nothing'
    )
  const parts = [...retained_g, pan_g]
  const found = sum(parts.map(({ value }) => value))
  const noise = NOISE * Math.hypot(...[charged_g, ...parts].map(uncertaintyOf))
  if (!(found > 0 && found <= charged_g.value + noise))
    throw new DomainError(
      'retained_g',
      `above 0 in all and at most what was charged (${Number(charged_g.value.toPrecision(6))})`,
      found,
      'weigh the fractions again: sieving makes no flake'
    )
  return { ...Object.fromEntries(stack.map((one, i) => [massKey(one), retained_g[i]!])), pan_g }
}
