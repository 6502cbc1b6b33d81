/** Correlation of estimates, from the causes they share: what tests hold against published ones. */

import { type Estimate, uncertaintyOf } from '../../src/metrology/estimate.ts'

/** Covariance of two estimates: the sum over the causes they share (GUM F.1.2.3). */
export function covariance(a: Estimate, b: Estimate): number {
  let sum = 0
  for (const [name, { u }] of a.terms) sum += u * (b.terms.get(name)?.u ?? 0)
  return sum
}

/** Correlation coefficient of two estimates; 0 where either is exact. */
export function correlation(a: Estimate, b: Estimate): number {
  const scale = uncertaintyOf(a) * uncertaintyOf(b)
  return scale === 0 ? 0 : covariance(a, b) / scale
}
