/** Figures with their uncertainties along one scale, in parts of its length. */

import type { KnownFigure } from './compare.ts'

export interface Stroke {
  /** Where the figure stands, from 0 to 1. */
  readonly at: number
  /** Ends of its interval; the figure itself where none is stated. */
  readonly from: number
  readonly to: number
}

/** Room left at both ends of the scale. */
const ROOM = 0.06

/** Strokes of some figures on a scale that holds them all; undefined for figures that are bounds. */
export function strokesOf(
  figures: readonly (KnownFigure | undefined)[]
): readonly (Stroke | undefined)[] {
  const ends = figures.map(figure => (figure && !figure.below ? endsOf(figure) : undefined))
  const known = ends.filter(end => end !== undefined)
  // A scale for one figure alone would say nothing.
  if (known.length < 2) return figures.map(() => undefined)
  const low = Math.min(...known.map(({ from }) => from))
  const span = Math.max(...known.map(({ to }) => to)) - low
  const place = (x: number) => (span === 0 ? 0.5 : ROOM + (1 - 2 * ROOM) * ((x - low) / span))
  return ends.map(end => end && { at: place(end.at), from: place(end.from), to: place(end.to) })
}

function endsOf({ exact, uncertainty }: KnownFigure): Stroke {
  const U = Number(uncertainty ?? 0)
  return { at: exact, from: exact - U, to: exact + U }
}
