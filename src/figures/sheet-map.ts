/** A sheet seen from above, with a figure at each place where it was read. */

import type { Drawing, Shade, Shape, TextShape } from './drawing.ts'
import { round, word } from './shapes.ts'

/** A figure and its place, from the lower left corner of the sheet. */
export interface MapSpot {
  readonly x: number
  readonly y: number
  /** The figure as printed. */
  readonly text: string
  readonly shade: Shade
}

export interface SheetMap {
  /** Sides, in the unit of the places. */
  readonly length: number
  readonly width: number
  /** What is said of the sides: 'length 90.08 mm'. */
  readonly lengthText: string
  readonly widthText: string
  readonly spots: readonly MapSpot[]
}

/** Lengths in points. */
const WIDTH = 240
const LEFT = 34
const RIGHT = 18
const TOP = 10
const FOOT = 26
const TALLEST = 260
const LARGEST_DOT = 9
/** Of the nearest distance of two places, the part a dot may take. */
const ROOM = 0.2
/** From the rim of a dot to the foot of its figure, below it or, at the lower edge, above. */
const BELOW = 11
const ABOVE = 3

const shades = ['shade-1', 'shade-2', 'shade-3', 'shade-4', 'shade-5'] as const

/** The shade of a value, of a range that may be a single value. */
export function shadeOf(value: number, least: number, greatest: number): Shade {
  const part = greatest > least ? (value - least) / (greatest - least) : 0.5
  return shades[Math.min(shades.length - 1, Math.max(0, Math.floor(part * shades.length)))]!
}

/** Draw a map; the figure stands below its dot, so that shade never hides it. */
export function drawSheetMap(map: SheetMap): Drawing {
  const room = WIDTH - LEFT - RIGHT
  const scale = Math.min(room / map.length, TALLEST / map.width)
  const [across, high] = [map.length * scale, map.width * scale]
  const bottom = TOP + high
  const radius = Math.min(LARGEST_DOT, ROOM * nearest(map.spots) * scale)
  return {
    width: WIDTH,
    height: Math.ceil(bottom + FOOT),
    shapes: [
      { is: 'path', role: 'outline', d: outline(LEFT, TOP, across, high) },
      middle('label', LEFT + across / 2, bottom + 18, map.lengthText),
      { ...middle('label', LEFT - 20, TOP + high / 2, map.widthText), turned: true },
      ...map.spots.flatMap(spot => spotShapes(spot, { scale, bottom, radius }))
    ]
  }
}

const outline = (x: number, y: number, across: number, high: number) =>
  `M${round(x)},${round(y)}H${round(x + across)}V${round(y + high)}H${round(x)}Z`

const middle = (role: 'label' | 'name', x: number, y: number, text: string): TextShape =>
  word(role, round(x), round(y), text, 'middle')

/** Least distance of two places; endless where there is one. */
function nearest(spots: readonly MapSpot[]): number {
  const distances = spots.flatMap((one, index) =>
    spots.slice(index + 1).map(other => Math.hypot(one.x - other.x, one.y - other.y))
  )
  return Math.min(...distances.filter(distance => distance > 0))
}

function spotShapes(
  spot: MapSpot,
  { scale, bottom, radius }: { scale: number; bottom: number; radius: number }
): Shape[] {
  const [x, y] = [LEFT + spot.x * scale, bottom - spot.y * scale]
  const below = y + radius + BELOW
  return [
    { is: 'dot', role: spot.shade, x: round(x), y: round(y), r: round(radius) },
    middle('name', x, below < bottom ? below : y - radius - ABOVE, spot.text)
  ]
}
