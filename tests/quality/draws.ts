/** Samples of a standard normal population, the same at every run. */

import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

/** Even numbers above 0 and below 1: a 32-bit congruential generator, constants of Numerical Recipes. */
function* uniforms(seed: number): Generator<number, never> {
  let state = seed >>> 0
  for (;;) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    yield (state + 0.5) / 2 ** 32
  }
}

/** `count` samples of `n` figures each. */
export function normalDraws(count: number, n: number, seed = 20260101): number[][] {
  const source = uniforms(seed)
  return Array.from({ length: count }, () =>
    Array.from({ length: n }, () => normalQuantile(source.next().value, 0, 1))
  )
}
