/**
 * How often a sampling plan accepts: its operating characteristic.
 *
 *     from a lot         P = Σ C(D, k) · C(N − D, n − k) / C(N, n), k from 0 to Ac
 *     from a process     P = Σ C(n, k) · p^k · (1 − p)^(n − k), k from 0 to Ac
 *
 * N units of which D do not conform, n of them drawn, p the part a process yields.
 *
 * Source: the hypergeometric and the binomial distribution.
 */

/**
 * Probability that a lot is accepted.
 *
 * @param lotSize N, whole
 * @param nonconforming D, whole, 0 to N
 * @param sampleSize n, whole, 0 to N
 * @param acceptance Ac, whole, at least 0
 * @returns 0 to 1
 */
export function acceptanceOfLot(
  lotSize: number,
  nonconforming: number,
  sampleSize: number,
  acceptance: number
): number {
  const conforming = lotSize - nonconforming
  const all = logChoose(lotSize, sampleSize)
  let sum = 0
  for (
    let k = Math.max(0, sampleSize - conforming);
    k <= Math.min(acceptance, nonconforming, sampleSize);
    k++
  )
    sum += Math.exp(logChoose(nonconforming, k) + logChoose(conforming, sampleSize - k) - all)
  return Math.min(1, sum)
}

/**
 * Probability that a sample of a process is accepted.
 *
 * @param fraction p, 0 to 1
 * @param sampleSize n, whole, above 0
 * @param acceptance Ac, whole, at least 0
 * @returns 0 to 1
 */
export function acceptanceOfProcess(
  fraction: number,
  sampleSize: number,
  acceptance: number
): number {
  if (fraction <= 0 || acceptance >= sampleSize) return 1
  if (fraction >= 1) return 0
  let sum = 0
  for (let k = 0; k <= acceptance; k++)
    sum += Math.exp(
      logChoose(sampleSize, k) + k * Math.log(fraction) + (sampleSize - k) * Math.log1p(-fraction)
    )
  return Math.min(1, sum)
}

/** Halvings after which a quality is known to the last digit of a double. */
const HALVINGS = 60

/**
 * Part nonconforming at which a sample of a process is accepted with a probability.
 *
 * @param probability above 0, below 1: 0.1 for the quality that is accepted one time in ten
 * @returns fraction, 0 to 1
 */
export function qualityAccepted(
  probability: number,
  sampleSize: number,
  acceptance: number
): number {
  let [low, high] = [0, 1]
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2
    if (acceptanceOfProcess(middle, sampleSize, acceptance) > probability) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** ln C(n, k): the shorter of the two products. */
function logChoose(n: number, k: number): number {
  const least = Math.min(k, n - k)
  let sum = 0
  for (let i = 1; i <= least; i++) sum += Math.log((n - least + i) / i)
  return sum
}
