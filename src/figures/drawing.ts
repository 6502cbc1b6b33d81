/**
 * A drawing as plain strokes and words, for any renderer: lengths in points, y downwards, no colours.
 * What a stroke stands for is its role, and each renderer has its own look for that.
 */

/** From the least to the greatest of what is shown, in five even steps. */
export type Shade = 'shade-1' | 'shade-2' | 'shade-3' | 'shade-4' | 'shade-5'

export type Role =
  | 'axis'
  | 'grid'
  | 'bound'
  | 'control'
  | 'centre'
  | 'trace'
  | 'average'
  | 'whisker'
  | 'plain'
  | 'other'
  | 'signal'
  | 'label'
  | 'name'
  | 'outline'
  | 'log-own'
  | 'log-other'
  | 'log-bare'
  | 'log-standard'
  | 'tick'
  | Shade

interface Stroke {
  readonly role: Role
  /** What it stands for, by the name its maker gave it; absent for the frame. */
  readonly of?: string
}

export interface LineShape extends Stroke {
  readonly is: 'line'
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

export interface PathShape extends Stroke {
  readonly is: 'path'
  /** Data of one SVG path: M, L, Z. */
  readonly d: string
}

export interface DotShape extends Stroke {
  readonly is: 'dot'
  readonly x: number
  readonly y: number
  readonly r: number
}

export interface TextShape extends Stroke {
  readonly is: 'text'
  readonly x: number
  readonly y: number
  readonly text: string
  readonly anchor: 'start' | 'middle' | 'end'
  /** Set from bottom to top. */
  readonly turned?: boolean
}

export type Shape = LineShape | PathShape | DotShape | TextShape

export interface Drawing {
  readonly width: number
  readonly height: number
  readonly shapes: readonly Shape[]
}
