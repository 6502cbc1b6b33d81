/** Shapes that charts share. */

import type { LineShape, Role, TextShape } from './drawing.ts'

/** A length to a tenth of a point. */
export const round = (length: number): number => Math.round(length * 10) / 10

export const segment = (role: Role, x1: number, y1: number, x2: number, y2: number): LineShape => ({
  is: 'line',
  role,
  x1,
  y1,
  x2,
  y2
})

export const word = (
  role: Role,
  x: number,
  y: number,
  text: string,
  anchor: TextShape['anchor']
): TextShape => ({ is: 'text', role, x, y, text, anchor })

/** Least and greatest of what is shown; a little room where all are one. */
export function extent(values: readonly number[]): [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const room = low === high ? Math.abs(low) / 10 || 1 : 0
  return [low - room, high + room]
}
