/** The one place where an increasing function takes a wanted value. */

/** Steps after which a search that still moves is a bug: a dozen are usual. */
const MOST_STEPS = 1000

/** Relative change of x below which a step says nothing new. */
const STILL = 1e-14

/**
 * The x above 0 where an increasing function crosses zero, good to some 13 digits: false position, in
 * the Illinois form that halves the end which does not move.
 *
 * @param guess above 0; the bracket grows from it by doubling and halving
 * @throws RangeError where the function never crosses zero
 */
export function crossing(increasing: (x: number) => number, guess: number): number {
  const low = { x: guess, y: increasing(guess) }
  const high = { ...low }
  for (let step = 0; low.y > 0; step++) move(low, low.x / 2, increasing, step)
  for (let step = 0; high.y < 0; step++) move(high, high.x * 2, increasing, step)
  let before = NaN
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = high.y > low.y ? high.x - (high.y * (high.x - low.x)) / (high.y - low.y) : low.x
    const y = increasing(x)
    if (y === 0 || Math.abs(x - before) <= STILL * x) return x
    const [moved, kept] = y < 0 ? [low, high] : [high, low]
    if (moved.x === before) kept.y /= 2
    Object.assign(moved, { x, y })
    before = x
  }
  throw new RangeError('the search did not come to rest')
}

interface End {
  x: number
  y: number
}

function move(end: End, x: number, increasing: (x: number) => number, step: number): void {
  if (step > MOST_STEPS) throw new RangeError('the function never crosses zero')
  Object.assign(end, { x, y: increasing(x) })
}
