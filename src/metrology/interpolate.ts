/**
 * Between the nodes of a table.
 *
 * Source: C. F. Moler, Numerical Computing with MATLAB, chapter 3, for the shape-preserving cubic of
 * Fritsch and Carlson with Butland's slopes (from memory, not checked against the print).
 */

/** Index of the piece of a rising table that `x` lies in; the outer pieces take what lies beyond. */
function pieceOf(xs: readonly number[], x: number): number {
  let low = 0
  let high = xs.length - 2
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (xs[middle]! <= x) low = middle
    else high = middle - 1
  }
  return low
}

/**
 * The straight line between two nodes.
 *
 * @param xs rising
 * @returns the value at `x`; beyond the table, on its outer piece drawn longer; a table of one node is
 *   that node everywhere
 */
export function linearAt(xs: readonly number[], ys: readonly number[], x: number): number {
  if (xs.length === 1) return ys[0]!
  const i = pieceOf(xs, x)
  const part = (x - xs[i]!) / (xs[i + 1]! - xs[i]!)
  return ys[i]! + part * (ys[i + 1]! - ys[i]!)
}

/**
 * A smooth curve through a table that rises and falls only where the table does.
 *
 * @param xs at least three, rising
 * @returns the curve, for `x` within the table
 */
export function curveThrough(xs: readonly number[], ys: readonly number[]): (x: number) => number {
  const slopes = slopesOf(xs, ys)
  return x => {
    const i = pieceOf(xs, x)
    const h = xs[i + 1]! - xs[i]!
    const s = x - xs[i]!
    const chord = (ys[i + 1]! - ys[i]!) / h
    const c = (3 * chord - 2 * slopes[i]! - slopes[i + 1]!) / h
    const b = (slopes[i]! - 2 * chord + slopes[i + 1]!) / (h * h)
    return ys[i]! + s * (slopes[i]! + s * (c + s * b))
  }
}

/** Butland's weighted harmonic mean inside, a three-point slope at the ends. */
function slopesOf(xs: readonly number[], ys: readonly number[]): number[] {
  const h = xs.slice(1).map((x, i) => x - xs[i]!)
  const chords = h.map((width, i) => (ys[i + 1]! - ys[i]!) / width)
  const last = h.length - 1
  return xs.map((_, i) => {
    if (i === 0) return endSlope(h[0]!, h[1]!, chords[0]!, chords[1]!)
    if (i === xs.length - 1)
      return endSlope(h[last]!, h[last - 1]!, chords[last]!, chords[last - 1]!)
    const [left, right] = [chords[i - 1]!, chords[i]!]
    if (left * right <= 0) return 0
    const [w1, w2] = [2 * h[i]! + h[i - 1]!, h[i]! + 2 * h[i - 1]!]
    return (w1 + w2) / (w1 / left + w2 / right)
  })
}

function endSlope(h0: number, h1: number, chord0: number, chord1: number): number {
  const slope = ((2 * h0 + h1) * chord0 - h0 * chord1) / (h0 + h1)
  if (slope * chord0 <= 0) return 0
  const turns = chord0 * chord1 <= 0 && Math.abs(slope) > 3 * Math.abs(chord0)
  return turns ? 3 * chord0 : slope
}
